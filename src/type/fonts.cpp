// SPDX-License-Identifier: GPL-3.0-or-later
#include "type/fonts.h"

#include "type/characters.h"
#include "type/face.h"
#include "type/installed.h"

#include <algorithm>

namespace qw::type {

namespace {

/// In the order of Cut.
const std::vector<Wanted>& wanted() {
    static const std::vector<Wanted> faces{{"Lato", "Regular", "fonts-lato"},
                                           {"Lato", "Bold", "fonts-lato"},
                                           {"Lato", "Italic", "fonts-lato"},
                                           {"Vollkorn", "SemiBold", "fonts-vollkorn"}};
    return faces;
}

Length scaled(const Face& face, Length size, std::int64_t font_units) {
    return size * (static_cast<double>(font_units) / face.units_per_em);
}

}  // namespace

struct Fonts::State {
    std::vector<Face> faces;

    // Never changed after `find`, hence safe for any number of threads.
    const Face& at(Cut cut) const { return faces[static_cast<std::size_t>(cut)]; }
};

Fonts::Fonts(std::unique_ptr<State> state) : state_(std::move(state)) {}
Fonts::Fonts(Fonts&&) noexcept = default;
Fonts& Fonts::operator=(Fonts&&) noexcept = default;
Fonts::~Fonts() = default;

Fonts Fonts::find() {
    auto state = std::make_unique<State>();
    for (const Path& file : installed_files(wanted())) state->faces.push_back(read_face(file));
    return Fonts(std::move(state));
}

const Path& Fonts::file(Cut cut) const { return state_->at(cut).file; }
const std::string& Fonts::name(Cut cut) const { return state_->at(cut).name; }
unsigned Fonts::embedding(Cut cut) const { return state_->at(cut).embedding; }

Length Fonts::width(Cut cut, Length size, const std::string& utf8) const {
    const Face& face = state_->at(cut);
    // Summed in font units and scaled once: the width of a line does not gather the rounding of its characters.
    std::int64_t units = 0;
    for (const std::uint32_t character : characters_of(utf8))
        if (const int* advance = face.advance(character)) units += *advance;
    return scaled(face, size, units);
}

Length Fonts::cap_height(Cut cut, Length size) const { return scaled(state_->at(cut), size, state_->at(cut).cap_height); }
Length Fonts::descent(Cut cut, Length size) const { return scaled(state_->at(cut), size, state_->at(cut).descent); }

std::vector<std::string> Fonts::missing(Cut cut, const std::string& utf8) const {
    const Face& face = state_->at(cut);
    std::vector<std::string> absent;
    for (const std::uint32_t character : characters_of(utf8)) {
        if (face.advance(character)) continue;
        const std::string text = utf8_of(character);
        if (std::find(absent.begin(), absent.end(), text) == absent.end()) absent.push_back(text);
    }
    return absent;
}

}  // namespace qw::type
