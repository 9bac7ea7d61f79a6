// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include <catch2/catch.hpp>

using qw::bundle::fault_in_name;

TEST_CASE("names that every system accepts pass") {
    for (const char* name : {"a", "contents.txt", "letter/borderless/journal-pages.pdf", "a4/bordered/full_sheets-01.pdf", ".hidden",
                             "console.txt", "com0.txt", "com10", "lpt", "nulls/aux-1.pdf", "a..b"})
        CHECK(fault_in_name(name) == "");
    CHECK(fault_in_name(std::string(180, 'x')) == "");
}

TEST_CASE("names that some system refuses or turns against its user are faults") {
    for (const char* name : {"", "/etc/passwd", "../x", "a/../b", "..", ".", "a/./b", "a//b", "a/", "Upper.pdf", "with space.pdf",
                             "a\\b", "c:x", "ends.", "folder./x", "trail ", "caf\xc3\xa9.pdf", "a\nb", "que?y", "st*r"}) {
        INFO(name);
        CHECK(fault_in_name(name) != "");
    }
    CHECK(fault_in_name(std::string(181, 'x')) != "");
    CHECK(fault_in_name(std::string("a\0b", 3)) != "");
}

TEST_CASE("device names are faults in any folder and with any extension") {
    // Microsoft, "Naming Files, Paths, and Namespaces": CON, PRN, AUX, NUL, COM1-COM9, LPT1-LPT9, also with extension.
    for (const char* device : {"con", "prn", "aux", "nul", "com1", "com5", "com9", "lpt1", "lpt9"}) {
        INFO(device);
        CHECK(fault_in_name(device) != "");
        CHECK(fault_in_name(std::string(device) + ".pdf") != "");
        CHECK(fault_in_name(std::string("letter/") + device + ".tar.gz") != "");
        CHECK(fault_in_name(std::string(device) + "/x.pdf") != "");
        CHECK(fault_in_name(std::string(device) + "x.pdf") == "");
    }
}
