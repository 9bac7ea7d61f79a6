// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts.h"

#include <filesystem>
#include <string>

#include "almanac.h"
#include "pictures.h"

namespace art {
namespace {

// The tags' fronts are files of several kinds, as artwork from several hands would be.
void write_tag_front(const std::string& folder, int kind) {
    const Pixels pixels = paint(kTagFronts[static_cast<std::size_t>(kind)], kTagFace.canvas());
    const std::string name = folder + std::to_string(kind + 1);
    if (kind == 2)
        write_grey_png(name + ".png", pixels);
    else if (kind == 3)
        write_palette_png(name + ".png", pixels);
    else if (kind == 5)
        write_jpeg(name + ".jpg", pixels, 90, false);
    else
        write_png(name + ".png", pixels);
}

}  // namespace

void write_parts(const std::string& folder, const std::string& only) {
    const auto make = [&](const std::string& below, int count, const auto& write) {
        std::filesystem::create_directories(folder + "/" + below);
        for (int i = 0; i < count; ++i)
            if (const std::string name = below + std::to_string(i + 1); only.empty() || only.starts_with(name + "."))
                write(i);
    };
    const auto pictures = [&](const std::string& below, int count, const Face& face, const auto& draw) {
        make(below, count, [&](int i) {
            write_png(folder + "/" + below + std::to_string(i + 1) + ".png",
                      paint([&](Pen& pen) { draw(pen, i); }, face.canvas()));
        });
    };
    const auto each = [](const std::array<Draw, kKinds>& draws) {
        return [&draws](Pen& pen, int i) { draws[static_cast<std::size_t>(i)](pen); };
    };
    pictures("pockets/", kKinds, kPocketFace, each(kPocketOutsides));
    pictures("pockets/strip/", kKinds, kStripFace, each(kPocketStrips));
    pictures("pockets/inside/", 1, kPocketFace, [](Pen& pen, int) { pocket_inside(pen); });
    make("tags/", kKinds, [&](int i) { write_tag_front(folder + "/tags/", i); });
    pictures("tags/back/", kKinds, kTagFace, tag_back);
    pictures("envelopes/", 2, kEnvelopeFace, envelope_front);
    pictures("envelopes/flap/", 2, kFlapFace, envelope_flap);
    pictures("envelopes/back/", 2, kBackFace, envelope_back);
    pictures("envelopes/side/", 2, kSideFace, envelope_side);
}

}  // namespace art
