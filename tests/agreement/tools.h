// SPDX-License-Identifier: GPL-3.0-or-later
// What programs that others wrote say of a PDF, in the words of our own facts.
#pragma once

#include "base/disk.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace qw::agreement {

/// Everything that pdfinfo can say, boxes in points as it prints them.
struct Info {
    bool opened = false;
    int pages = 0;
    std::string version;
    bool encrypted = false, scripts = false;
    struct Page {
        int rotate = 0;
        std::vector<double> media, crop, bleed, trim;  ///< left, bottom, right, top
    };
    std::vector<Page> of_pages;
};
Info info_of(const Path& pdf);

/// Of each font "name embedded subset".
std::set<std::string> fonts_of(const Path& pdf);

struct Pictures {
    std::multiset<std::string> painted;  ///< "page width x height, colour, bits"; of stencils and pictures whose own format tells, no more than page and size
    std::multiset<int> soft_masks;       ///< their pages
};
Pictures pictures_of(const Path& pdf);

/// What `qpdf --check` found: 0 nothing, 3 what can be borne, 2 what cannot (its manual, "Exit Status").
int checked(const Path& pdf);

struct Structure {
    bool encrypted = false, attachments = false;
    std::size_t pages = 0;
};
/// By `qpdf --json`; nothing where it cannot open the file.
std::optional<Structure> structure_of(const Path& pdf);

/// By mutool, from the catalog: names with their slash, "true" or "false", empty where there is none.
struct Shown {
    bool opened = false;
    std::string print_scaling, duplex, tray;
    bool opens_with_script = false;  ///< the catalog's OpenAction, which pdfinfo does not look at
    int pages = 0;
};
Shown shown_of(const Path& pdf);

}  // namespace qw::agreement
