// SPDX-License-Identifier: GPL-3.0-or-later
// Which files a manifest names: patterns, odd names, and every way out of the kit.
#include "kit/example.h"
#include "kit/glob.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <sys/stat.h>

using namespace qw;
using namespace qw::test;

namespace {

std::string with_files(const std::string& files) { return with(with(sound_manifest, "art/*.png", files), "duplex", "single"); }

std::vector<std::string> shown(const kit::Manifest& manifest) {
    std::vector<std::string> names;
    for (const kit::ArtworkFile& file : manifest.sets.front().files) names.push_back(file.shown);
    return names;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("patterns: star, question mark, characters, hidden names") {
    const auto matches = [](const char* pattern, const char* name) { return kit::glob_matches(pattern, name); };
    CHECK(matches("*.png", "1.png"));
    CHECK(matches("*", "1.png"));
    CHECK(matches("a*b*c", "aXbYbZc"));
    CHECK(matches("a**c", "ac"));
    CHECK(matches("page-?.png", "page-1.png"));
    CHECK(matches("page-?.png", "page-é.png"));  // two bytes, one character
    CHECK(matches("é?", "éü"));
    CHECK(matches(".*", ".hidden"));
    CHECK(matches("", ""));
    CHECK_FALSE(matches("page-?.png", "page-12.png"));
    CHECK_FALSE(matches("*.png", "1.PNG"));
    CHECK_FALSE(matches("*.png", ".png"));
    CHECK_FALSE(matches("?hidden", ".hidden"));
    CHECK_FALSE(matches("*.png", "1.png~"));
    CHECK_FALSE(matches("", "a"));
    CHECK_FALSE(matches("?", ""));
    CHECK_FALSE(matches("[12].png", "1.png"));  // brackets are themselves
    CHECK(matches("[12].png", "[12].png"));
    // Backtracking stays proportional to the lengths multiplied.
    CHECK_FALSE(matches((std::string(200, '*') + "b").c_str(), std::string(20'000, 'a').c_str()));
}

TEST_CASE("files come in natural order within a pattern, patterns in the order written") {
    ExampleKit kit;
    for (const char* name : {"art/p/page-10.png", "art/p/page-9.png", "art/p/page-1.png", "art/p/page-02.png", "art/q/x.png", "art/p/notes.txt"}) kit.put(name);
    CHECK(shown(kit.read(with_files("art/p/*.png"))) == Names{"art/p/page-1.png", "art/p/page-02.png", "art/p/page-9.png", "art/p/page-10.png"});
    CHECK(shown(kit.read(with_files("[art/q/*.png, 'art/p/page-1?.png', art/1.png]"))) == Names{"art/q/x.png", "art/p/page-10.png", "art/1.png"});
    CHECK(shown(kit.read(with_files("[./art/./1.png]"))) == Names{"art/1.png"});
    CHECK(shown(kit.read(with_files("art/*"))) == Names{"art/1.png", "art/2.png"});  // neither the hidden file nor folders
    CHECK(shown(kit.read(with_files("art/.hidden.png"))) == Names{"art/.hidden.png"});
    const kit::Manifest manifest = kit.read(with_files("[art/q/*.png, art/1.png]"));
    CHECK(manifest.sets[0].files[0].path == std::filesystem::canonical(kit / "art/q/x.png"));
    CHECK(manifest.sets[0].files[0].mark.column == 13);
    CHECK(manifest.sets[0].files[1].mark.column == 26);
}

TEST_CASE("what names no file, or no file of the kit") {
    ExampleKit kit;
    kit.put("art/Page.PNG");
    kit.put("../outside/o.png");
    const auto told_of = [&](const std::string& files) { return told(kit.faults(with_files(files))); };
    for (const char* path : {"../outside/o.png", "art/../../outside/o.png", "art/../art/1.png", "..", "/etc/passwd", "'C:\\art\\1.png'", "c:/art/1.png", "/"}) {
        INFO(path);
        CHECK(told_of(path) == "leaves-kit 9:12");
    }
    for (const char* path : {"art\\1.png", "art//1.png", "art/", "art/.", "art/*/1.png", "a?t/1.png", "\"art/1\\n.png\"", "''"}) {
        INFO(path);
        CHECK(told_of(path) == "bad-path 9:12");
    }
    CHECK(told_of(std::string(256, 'a') + "/1.png") == "bad-path 9:12");
    CHECK(told_of("art/" + std::string(256, 'a')) == "bad-path 9:12");
    std::string long_path;
    for (int i = 0; i < 300; ++i) long_path += "aaaa/";
    CHECK(told_of(long_path + "1.png") == "bad-path 9:12");
    CHECK(told_of("art/*.gif") == "empty-glob 9:12");
    CHECK(told_of("art/?????.png") == "empty-glob 9:12");
    CHECK(told_of("arts/*.png") == "missing-folder 9:12");
    CHECK(told_of("art/1.png/*.png") == "missing-folder 9:12");
    CHECK(told_of("art/page.png") == "missing-file 9:12");
    CHECK(told_of("art/sub.png") == "not-a-file 9:12");
    CHECK(told_of("[art/1.png, art/1.png]") == "duplicate-file 9:24");
    CHECK(told_of("[art/*.png, art/2.png]") == "duplicate-file 9:24");
    CHECK(told_of("[art/1.png, ./art/1.png]") == "duplicate-file 9:24");
    CHECK(told_of("[art/x.png, ../y.png, art/*.gif]") == "missing-file 9:13\nleaves-kit 9:24\nempty-glob 9:34");

    const auto mend_of = [&](const std::string& files) { return kit.faults(with_files(files)).front().mend; };
    CHECK_THAT(mend_of("art/page.png"), Catch::Contains("write 'art/Page.PNG'"));
    CHECK_THAT(mend_of("art/P*.png"), Catch::Contains("'Page.PNG'"));
    CHECK_THAT(mend_of("arts/*.png"), Catch::Contains("'art'"));
    CHECK_THAT(mend_of("art/sub.png"), Catch::Contains("art/sub.png/*.png"));
}

TEST_CASE("links may lead about in the kit, and nowhere else") {
    ExampleKit kit;
    kit.put("../outside/o.png");
    kit.put("more/m.png");
    const auto link = [&](const std::string& to, const std::string& name) {
        std::filesystem::create_directories((kit / name).parent_path());
        std::filesystem::create_symlink(to, kit / name);
    };
    const auto told_of = [&](const std::string& files) { return told(kit.faults(with_files(files))); };
    link("../more/m.png", "in/linked.png");
    link("../more", "in/folder");
    link((kit / "art/1.png").string(), "in/absolute.png");
    CHECK(shown(kit.read(with_files("in/*.png"))) == Names{"in/absolute.png", "in/linked.png"});
    CHECK(shown(kit.read(with_files("in/folder/*.png"))) == Names{"in/folder/m.png"});
    CHECK(kit.read(with_files("in/linked.png")).sets[0].files[0].path == std::filesystem::canonical(kit / "more/m.png"));

    link("../../outside/o.png", "out/file.png");
    link("../../outside", "out/folder");
    link("..", "up/top");
    link("../..", "up/above");
    link("nothing.png", "broken/gone.png");
    link("round.png", "broken/round.png");
    CHECK(told_of("out/*.png") == "leaves-kit 9:12");
    CHECK(told_of("out/file.png") == "leaves-kit 9:12");
    CHECK(told_of("out/folder/o.png") == "leaves-kit 9:12");
    CHECK(told_of("out/folder/*.png") == "leaves-kit 9:12");
    CHECK(told_of("up/above/outside/o.png") == "leaves-kit 9:12");
    CHECK(told_of("up/top/art/1.png").empty());
    CHECK(told_of("broken/*.png") == "broken-link 9:12\nbroken-link 9:12");
    CHECK(told_of("broken/gone.png") == "broken-link 9:12");

    // A kit beside another whose name begins alike is another kit.
    kit.put("../kit2/o.png");
    link("../../kit2/o.png", "beside/o.png");
    CHECK(told_of("beside/o.png") == "leaves-kit 9:12");
}

TEST_CASE("a kit that is itself reached by a link is a kit") {
    ExampleKit kit;
    kit.put("kit.yaml", sound_manifest);
    std::filesystem::create_directory_symlink(kit / "", (kit / "").parent_path().parent_path() / "alias");
    const auto disk = real_disk();
    std::vector<kit::InputFile> inputs;
    const auto manifest = kit::read_manifest(*disk, (kit / "").parent_path().parent_path() / "alias", kit.pipeline(), inputs);
    CHECK(manifest.folder == std::filesystem::canonical(kit / ""));
    CHECK(manifest.sets[0].files.size() == 2);
}

TEST_CASE("odd names: what can be shown is allowed, what cannot is named") {
    ExampleKit kit;
    for (const char* name : {"odd/two words.png", "odd/été.png", "odd/潮.png", "odd/#1 & 'more'.png", "odd/[x]{y}.png"}) kit.put(name);
    CHECK(shown(kit.read(with_files("odd/*.png"))).size() == 5);
    CHECK(shown(kit.read(with_files("odd/two words.png"))) == Names{"odd/two words.png"});
    kit.put("odd/new\nline.png");
    kit.put("odd/latin\xe9.png");
    const auto notes = kit.faults(with_files("odd/*.png"));
    CHECK(told(notes) == "bad-file-name 9:12\nbad-file-name 9:12");
    REQUIRE(notes.size() == 2);
    CHECK_THAT(notes[0].what + notes[1].what, Catch::Contains("odd/new\\x0aline.png") && Catch::Contains("odd/latin\\xe9.png"));
    CHECK(kit.faults(with_files("odd/t*.png")).empty());  // what is not matched does not matter
    REQUIRE(::mkfifo((kit / "odd/pipe.png").c_str(), 0600) == 0);
    CHECK(told(kit.faults(with_files("odd/p*.png"))) == "not-a-file 9:12");
}

TEST_CASE("a PDF of many pages is one file") {
    ExampleKit kit;
    kit.put("art/pages.pdf", "%PDF-1.7");
    CHECK(shown(kit.read(with_files("art/pages.pdf"))) == Names{"art/pages.pdf"});
}
