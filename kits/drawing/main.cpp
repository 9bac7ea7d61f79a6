// SPDX-License-Identifier: GPL-3.0-or-later
// Draws the artwork of the demo kits and of the starter kit.
#include <exception>
#include <filesystem>
#include <iostream>
#include <string>

#include "almanac.h"
#include "lettering.h"

int main(int count, char** words) {
    if (count < 2) {
        std::cerr << "usage: draw-kits FOLDER [FILE]\n"
                     "FOLDER holds kits/ and pipeline/; FILE is one of the almanac, as pages/03.png\n";
        return 2;
    }
    try {
        const std::string root = words[1], only = count > 2 ? words[2] : "";
        const std::string almanac = root + "/kits/tidewater-almanac/art";
        const std::string lamplight = root + "/kits/lamplight-mini/art";
        const std::string starter = root + "/pipeline/starter/art";
        for (const std::string& folder : {almanac + "/pages", almanac + "/covers", almanac + "/extras", lamplight,
                                          starter + "/pages", starter + "/covers"})
            std::filesystem::create_directories(folder);
        art::require_typefaces();
        art::write_almanac(almanac, only);
        art::write_parts(almanac, only);
        if (!only.empty()) return 0;
        art::write_lamplight(lamplight);
        art::write_starter(starter);
    } catch (const std::exception& fault) {
        std::cerr << "draw-kits: " << fault.what() << '\n';
        return 3;
    }
}
