// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "support/fault_disk.h"
#include "support/shell.h"

#include <nlohmann/json.hpp>
#include <qpdf/QPDF.hh>

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

/// Clean kits, and what can be wrong with them: for every rule a defect that must raise it, and no other error, and a near
/// miss just inside the limit that must raise no error and no warning. Defects change artwork, manifests, templates, PDFs,
/// zips and texts, never facts.
namespace qw::corpus {

/// What is audited.
enum class Subject {
    kit,        ///< the kit's folder
    release,    ///< a release of it
    zip,        ///< the bundle alone
    published   ///< the kit's folder, with a release of it published
};

/// One entry of a bundle; more than names and bytes is for those who spoil it.
struct Packed {
    std::string name, bytes;
    std::uint16_t method = 0, flags = 0;
    std::uint32_t claimed = 0;                  ///< size in the headers; 0: the true one
};

/// RGB pixels, rows from the head, all 0 … 255.
struct Painting {
    std::uint32_t width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
    std::uint8_t* at(std::uint32_t x, std::uint32_t y) { return rgb.data() + (std::size_t{y} * width + x) * 3; }
    void fill(std::uint32_t left, std::uint32_t top, std::uint32_t right, std::uint32_t bottom, std::uint8_t r, std::uint8_t g, std::uint8_t b);
};

/// A private copy of the clean kit and its release, which a case may spoil. Lengths of pictures in pixels: faces have
/// `face_ppi` pixels an inch and are drawn at 303 x 221.9 mm, 3 mm of bleed on A4.
class Work {
public:
    static constexpr double face_ppi = 150;

    Work(const Path& clean, const Path& folder);
    Path kit() const { return folder_ / "kit"; }
    Path out() const { return folder_ / "out"; }
    Path release() const;
    Path zip() const;
    /// The shared data, copied when it is asked for the first time; the audit then uses the copy.
    Path pipeline();
    bool own_pipeline() const { return own_pipeline_; }

    /// Settings of the environment in which the audit runs, as the shell takes them.
    std::string environment;
    Path folder() const { return folder_; }
    /// The listing as it was pasted from the shop; the audit holds it against the kit.
    void text(const std::string& pasted) {
        write(folder_ / "listing.txt", pasted);
        has_text = true;
    }
    bool has_text = false;

    // The kit.
    std::string read(const Path& path) const;
    void write(const Path& path, const std::string& bytes) const;
    /// `from` once in a file; throws when it is not there.
    void replace(const Path& path, const std::string& from, const std::string& to) const;
    /// In kit.yaml.
    void manifest(const std::string& from, const std::string& to) const { replace(kit() / "kit.yaml", from, to); }
    Path face(int number) const;
    Painting painting(int face) const;
    /// PNG, RGB, 8 bits, with the density of the faces unless another is given; 0: none.
    void paint(const Path& path, const Painting& painting, double ppi = face_ppi) const;
    void repaint(int face, const std::function<void(Painting&)>& change) const;

    // The bundle. It is written, with contents.txt and release.json as they then have to be, when the case is done.
    std::vector<Packed>& bundle();
    Packed& packed(const std::string& name);
    void edit_bytes(const std::string& name, const std::function<void(std::string&)>& change);
    void edit_pdf(const std::string& name, const std::function<void(QPDF&)>& change);
    /// Leaves contents.txt, or the record, as it was.
    bool contents_follow = true, record_follows = true;
    /// After the bundle is in its place.
    std::function<void(std::string& zip)> spoil_zip;
    std::function<void(nlohmann::ordered_json& record)> spoil_record;
    void finish();

private:
    Path folder_, clean_;
    bool own_pipeline_ = false, opened_ = false;
    std::vector<Packed> bundle_;
};

/// A PDF of artwork: pages of so many points with a ground and a bar, each another one, and a line in a font that is not in the
/// file.
std::string plain_pdf(int pages, double width, double height, bool with_font);

using Change = std::function<void(Work&)>;

struct Case {
    std::string rule;
    Subject subject = Subject::kit;
    Change defect;
    Change near;              ///< empty: none exists, for the reason below
    std::string no_near;
    std::string found_as = {};  ///< what the finding is called, where the rule stands for many
};

/// One list a family.
void add_pdf_cases(std::vector<Case>& cases);
void add_edition_cases(std::vector<Case>& cases);
void add_bundle_cases(std::vector<Case>& cases);
void add_zip_cases(std::vector<Case>& cases);
void add_artwork_cases(std::vector<Case>& cases);
void add_kit_cases(std::vector<Case>& cases);
void add_rights_cases(std::vector<Case>& cases);
void add_text_cases(std::vector<Case>& cases);
void add_sheet_cases(std::vector<Case>& cases);
void add_proof_cases(std::vector<Case>& cases);

/// Makes the clean kit in `folder`/kit, and with the program its release and what an audit keeps in `folder`/out.
void make_clean(const Path& folder);

/// Clean bundles that other programs packed, in their own ways: what they are called, and the command that packs the folder
/// `My Kit` of the working folder as `foreign.zip`.
struct ForeignPacker {
    std::string name, command;
};
std::vector<ForeignPacker> foreign_packers();
/// Puts such a bundle in the place of the release's.
void pack_foreign(const Work& work, const ForeignPacker& packer);

struct NamedZip {
    std::string name;
    Path path;
};
/// Where unzip, zipinfo, bsdtar or Python's zipfile say something else of a zip than bundle::read_zip, both answers.
std::vector<std::string> judged_zips(const std::vector<NamedZip>& zips, const Path& folder);

}  // namespace qw::corpus
