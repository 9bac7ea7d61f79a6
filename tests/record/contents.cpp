// SPDX-License-Identifier: GPL-3.0-or-later
#include "record/release_record.h"

#include "base/digest.h"
#include "base/fault.h"
#include "support/fault_disk.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

#include <fstream>

using namespace qw;
using namespace qw::record;

namespace {

File file(const std::string& path, const std::string& text) { return {path, "mini.zip", text.size(), sha256_of(text), "guide", {}, {}, 0}; }

}  // namespace

TEST_CASE("contents are told by digest and path, sorted, without themselves") {
    const std::string text = contents_text({file("letter/b.pdf", "b"), file("contents.txt", "?"), file("a4/a.pdf", "a"), file("terms.txt", "")});
    CHECK(text == sha256_of("a") + "  a4/a.pdf\n" + sha256_of("b") + "  letter/b.pdf\n" + sha256_of("") + "  terms.txt\n");
    CHECK(contents_text({}) == "");
}

TEST_CASE("sha256sum accepts contents.txt and sees a changed file") {
    const test::TestFolder folder;
    std::filesystem::create_directories(folder / "a4");
    std::ofstream(folder / "a4/a.pdf") << "a";
    std::ofstream(folder / "terms.txt") << "terms";
    std::ofstream(folder / "contents.txt") << contents_text({file("terms.txt", "terms"), file("a4/a.pdf", "a")});
    const test::Said good = test::run("sha256sum -c --strict contents.txt", folder.path());
    INFO(good.text);
    CHECK(good.status == 0);
    std::ofstream(folder / "terms.txt") << "other terms";
    CHECK(test::run("sha256sum -c --strict contents.txt", folder.path()).status != 0);
}

TEST_CASE("names that would need marking are refused") {
    CHECK_THROWS_AS(contents_text({file("a\\b", "x")}), Fault);
    CHECK_THROWS_AS(contents_text({file("a\nb", "x")}), Fault);
}
