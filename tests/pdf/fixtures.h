// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "base/disk.h"
#include "base/fault.h"
#include "compose/document.h"
#include "pdf/draw.h"
#include "type/fonts.h"

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace qw::test {

/// Found once for all tests.
const type::Fonts& drawing_fonts();

std::string file_text(const Path& file);
void write_text(const Path& file, const std::string& text);

/// A PNG as a paint program may write it: rows with different filters, data in several chunks.
struct PngPlan {
    std::uint32_t width = 0, height = 0;
    int bits = 8;
    int colour_type = 2;               ///< 0 grey, 2 RGB, 3 palette (PNG, ISO/IEC 15948 11.2.2)
    std::string palette;               ///< RGB triples
    std::vector<std::string> rows;     ///< packed samples, unfiltered
};
std::string png(const PngPlan& plan);
/// An RGB picture whose pixels differ everywhere, and its rows.
PngPlan colourful(std::uint32_t width, std::uint32_t height);
/// An RGB picture of noise, which does not pack.
PngPlan noisy(std::uint32_t width, std::uint32_t height);

/// A JPEG of a few coloured shapes made by Ghostscript's device "jpeg", "jpeggray" or "jpegcmyk".
void make_jpeg(const Path& file, const std::string& device, int width, int height);

/// A PDF file of numbered objects (the text between "obj" and "endobj"); number 1 is the catalog.
std::string pdf_of(const std::map<int, std::string>& objects);
/// The text of a stream object. `entries` are further entries of its dictionary.
std::string stream_object(const std::string& data, const std::string& entries = "");

/// One empty page of a paper, trim and bleed as on a borderless edition.
compose::Document one_page(Size paper);
compose::Document one_a4_page();
/// Adds a picture to the document and an item that fills `where` with it.
void place_picture(Disk& disk, compose::Document& document, std::size_t page, const Path& file, const Rect& where);
compose::PdfFace face(const Path& file, int page, const Matrix& place, const Rect& clip);
compose::Text line(const std::string& words, Point at, Length size, type::Cut cut = type::Cut::text);

/// What draw throws, its only note.
FaultNote refusal(const std::function<void()>& work, FaultKind kind);

}  // namespace qw::test
