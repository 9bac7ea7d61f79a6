// SPDX-License-Identifier: GPL-3.0-or-later
#include "type/installed.h"

#include "base/fault.h"

#include <fontconfig/fontconfig.h>

#include <algorithm>
#include <memory>

namespace qw::type {

namespace {

template <auto destroy>
struct Destroy {
    template <typename T>
    void operator()(T* handle) const {
        destroy(handle);
    }
};
using Config = std::unique_ptr<FcConfig, Destroy<FcConfigDestroy>>;
using Pattern = std::unique_ptr<FcPattern, Destroy<FcPatternDestroy>>;
using Objects = std::unique_ptr<FcObjectSet, Destroy<FcObjectSetDestroy>>;
using Set = std::unique_ptr<FcFontSet, Destroy<FcFontSetDestroy>>;

void add(FcPattern* pattern, const char* property, const std::string& text) {
    FcPatternAddString(pattern, property, reinterpret_cast<const FcChar8*>(text.c_str()));
}

std::string value(FcPattern* font, const char* property, int at) {
    FcChar8* text = nullptr;
    return FcPatternGetString(font, property, at, &text) == FcResultMatch ? reinterpret_cast<const char*>(text) : "";
}

/// A face carries several names side by side: Lato Black is family "Lato", style "Black", and family "Lato Black",
/// style "Regular". Only names of the same place belong together.
bool is_called(FcPattern* font, const Wanted& wanted) {
    for (int i = 0; !value(font, FC_FAMILY, i).empty(); ++i)
        if (value(font, FC_FAMILY, i) == wanted.family && value(font, FC_STYLE, i) == wanted.style) return true;
    return false;
}

std::vector<std::string> files_of(FcConfig* config, const Wanted& wanted) {
    const Pattern pattern(FcPatternCreate());
    const Objects asked(FcObjectSetBuild(FC_FILE, FC_FAMILY, FC_STYLE, nullptr));
    if (!config || !pattern || !asked) return {};
    add(pattern.get(), FC_FAMILY, wanted.family);
    add(pattern.get(), FC_STYLE, wanted.style);
    add(pattern.get(), FC_FONTFORMAT, "TrueType");
    FcPatternAddBool(pattern.get(), FC_VARIABLE, FcFalse);
    // A list holds what has these very values; a match would hand out the nearest other font instead.
    const Set found(FcFontList(config, pattern.get(), asked.get()));
    std::vector<std::string> files;
    for (int i = 0; found && i < found->nfont; ++i) {
        const std::string file = value(found->fonts[i], FC_FILE, 0);
        if (!file.empty() && is_called(found->fonts[i], wanted)) files.push_back(file);
    }
    return files;
}

FaultNote missing(const Wanted& wanted) {
    return {"font-missing", {}, "the typeface " + wanted.family + " " + wanted.style + " is not installed",
            "its TrueType file among those that fontconfig lists", "install the Debian package " + wanted.package};
}

bool before(const std::string& a, const std::string& b) {
    const auto by_a_user = [](const std::string& file) { return file.rfind("/usr/share/fonts/", 0) != 0; };
    return std::pair(by_a_user(a), a) < std::pair(by_a_user(b), b);
}

}  // namespace

std::vector<Path> installed_files(const std::vector<Wanted>& wanted) {
    const Config config(FcInitLoadConfigAndFonts());
    std::vector<Path> chosen;
    std::vector<FaultNote> faults;
    for (const Wanted& face : wanted) {
        const std::vector<std::string> files = files_of(config.get(), face);
        if (files.empty())
            faults.push_back(missing(face));
        else
            chosen.emplace_back(*std::min_element(files.begin(), files.end(), before));
    }
    if (!faults.empty()) throw Fault(FaultKind::not_carried_out, std::move(faults));
    return chosen;
}

}  // namespace qw::type
