// SPDX-License-Identifier: GPL-3.0-or-later
#include "almanac.h"

#include <array>
#include <cstdio>

#include "covers.h"
#include "extras.h"
#include "faces.h"
#include "pictures.h"

namespace art {
namespace {

struct Face {
    void (*draw)(Pen&);
    bool palette = false;  // some files are palette pictures, so that the kit holds both kinds
};

constexpr std::array<Face, 24> kFaces{{{title_face},
                                       {bookplate_face},
                                       {tide_table_face},
                                       {dot_shell_face, true},
                                       {light_face},
                                       {sound_chart_face},
                                       {knot_steps_face},
                                       {weather_face, true},
                                       {moon_face},
                                       {open_sea_face},
                                       {flag_face},
                                       {rose_face},
                                       {log_line_face, true},
                                       {shell_face},
                                       {two_tides_face, true},
                                       {harbour_face},
                                       {week_face, true},
                                       {six_lights_face},
                                       {knot_plate_face, true},
                                       {buoy_face},
                                       {sea_state_face},
                                       {month_face},
                                       {post_face, true},
                                       {closing_face}}};

std::string page_name(std::size_t index) {
    char name[32];
    std::snprintf(name, sizeof name, "pages/%02zu.png", index + 1);
    return name;
}

struct Cover {
    void (*draw)(Pen&);
    int quality;
    bool halved;
};

constexpr std::array<Cover, 5> kCovers{{{night_cover, 82, true},
                                        {chart_cover, 82, true},
                                        {wave_cover, 80, true},
                                        {knot_cover, 80, true},
                                        {lining_paper, 84, false}}};

}  // namespace

void write_almanac(const std::string& folder, const std::string& only) {
    const auto wanted = [&](const std::string& name) { return only.empty() || only == name; };
    for (std::size_t i = 0; i < kFaces.size(); ++i)
        if (const std::string name = page_name(i); wanted(name))
            (kFaces[i].palette ? write_palette_png : write_png)(folder + "/" + name, paint(kFaces[i].draw));
    for (std::size_t i = 0; i < kCovers.size(); ++i)
        if (const std::string name = "covers/cover-" + std::to_string(i + 1) + ".jpg"; wanted(name))
            write_jpeg(folder + "/" + name, paint(kCovers[i].draw), kCovers[i].quality, kCovers[i].halved);
    if (wanted("extras/extra-1.png")) write_png(folder + "/extras/extra-1.png", paint(label_sheet, true));
    if (wanted("extras/extra-2.jpg")) write_jpeg(folder + "/extras/extra-2.jpg", paint(card_sheet), 88, true);
}

}  // namespace art
