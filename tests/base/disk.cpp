// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"
#include "base/fault.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <array>
#include <filesystem>
#include <sys/stat.h>

using namespace qw;
using namespace qw::test;

namespace {

template <typename Act>
std::string told(Act&& act) {
    try {
        act();
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        return to_text(fault.notes().front());
    }
    return "";
}

}  // namespace

TEST_CASE("files are written and read back, at any place") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_file(*disk, folder / "a", "0123456789");
    CHECK(read_text(*disk, folder / "a", 10) == "0123456789");
    const auto source = disk->open(folder / "a");
    CHECK(source->size() == 10);
    std::array<std::byte, 4> bytes{};
    CHECK(source->read(8, bytes) == 2);
    CHECK(static_cast<char>(bytes[0]) == '8');
    CHECK(source->read(10, bytes) == 0);
    CHECK(source->read(1'000'000, bytes) == 0);
    write_file(*disk, folder / "a", "new");  // takes the place of the old one
    CHECK(read_text(*disk, folder / "a", 10) == "new");
    CHECK(disk->list(folder.path()) == std::vector<std::string>{"a"});
}

TEST_CASE("a file that is too large is not read") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_file(*disk, folder / "a", "0123456789");
    try {
        read_text(*disk, folder / "a", 9);
        FAIL("it was read");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        CHECK(fault.notes().front().code == "file-too-large");
    }
}

TEST_CASE("what is there is told, without following a link at its end") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_file(*disk, folder / "file", "abc");
    disk->make_folders(folder / "a/b/c");
    std::filesystem::create_symlink("file", folder / "link");
    std::filesystem::create_symlink("nowhere", folder / "broken");
    CHECK(disk->stat(folder / "file")->type == FileType::file);
    CHECK(disk->stat(folder / "file")->size == 3);
    CHECK(disk->stat(folder / "a/b")->type == FileType::folder);
    CHECK(disk->stat(folder / "link")->type == FileType::link);
    CHECK(disk->stat(folder / "broken")->type == FileType::link);
    CHECK_FALSE(disk->stat(folder / "nothing"));
    CHECK_FALSE(disk->stat(folder / "file/below"));
    CHECK(disk->list(folder.path()) == std::vector<std::string>{"a", "broken", "file", "link"});
}

TEST_CASE("places are resolved through links, and nothing is there at the end of a broken one") {
    const auto disk = real_disk();
    const TestFolder folder;
    const Path real = std::filesystem::canonical(folder.path());
    write_file(*disk, folder / "file", "abc");
    disk->make_folders(folder / "a");
    std::filesystem::create_symlink("../file", folder / "a/link");
    std::filesystem::create_symlink("nowhere", folder / "broken");
    std::filesystem::create_symlink("round", folder / "round");
    CHECK(disk->resolve(folder / "a/link") == real / "file");
    CHECK(disk->resolve(folder / "a/../a/./link") == real / "file");
    CHECK(disk->resolve(folder / "a/") == real / "a");
    CHECK_FALSE(disk->resolve(folder / "broken"));
    CHECK_FALSE(disk->resolve(folder / "round"));
    CHECK_FALSE(disk->resolve(folder / "nothing"));
    CHECK_FALSE(disk->resolve(folder / "file/below"));
}

TEST_CASE("a pipe is refused at once and not waited for") {
    const auto disk = real_disk();
    const TestFolder folder;
    REQUIRE(::mkfifo((folder / "pipe").c_str(), 0600) == 0);
    CHECK_THAT(told([&] { disk->open(folder / "pipe"); }), Catch::Contains("ordinary file"));
    CHECK_FALSE(told([&] { disk->open(folder.path()); }).empty());
}

TEST_CASE("what cannot be done is told with the path and the system's reason") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_file(*disk, folder / "a", "x");
    CHECK_THAT(told([&] { disk->open(folder / "none"); }), Catch::Contains("none") && Catch::Contains("No such file"));
    CHECK_THAT(told([&] { disk->create(folder / "a"); }), Catch::Contains("exists"));
    CHECK_THAT(told([&] { disk->list(folder / "none"); }), Catch::Contains("No such file"));
    CHECK_THAT(told([&] { disk->make_folders(folder / "a/b"); }), Catch::Contains("a/b"));
    CHECK_FALSE(told([&] { disk->link(folder / "none", folder / "b"); }).empty());
    CHECK_FALSE(told([&] { disk->rename(folder / "none", folder / "b"); }).empty());
    CHECK_FALSE(told([&] { disk->exchange(folder / "a", folder / "none"); }).empty());
    CHECK(told([&] { disk->remove(folder / "none"); }).empty());
}

TEST_CASE("two folders are exchanged in one step, files are linked, all is removed") {
    const auto disk = real_disk();
    const TestFolder folder;
    disk->make_folders(folder / "old");
    disk->make_folders(folder / "new");
    write_file(*disk, folder / "old/a", "old");
    write_file(*disk, folder / "new/a", "new");
    disk->exchange(folder / "new", folder / "old");
    CHECK(read_text(*disk, folder / "old/a", 10) == "new");
    CHECK(read_text(*disk, folder / "new/a", 10) == "old");
    disk->link(folder / "old/a", folder / "b");
    CHECK(std::filesystem::hard_link_count(folder / "b") == 2);
    disk->remove(folder / "new");
    CHECK_FALSE(disk->stat(folder / "new"));
}

TEST_CASE("a write that fails leaves the old file and nothing else, wherever it fails") {
    const auto disk = real_disk();
    for (std::size_t n = 1;; ++n) {
        const TestFolder folder;
        write_file(*disk, folder / "a", "old");
        FaultDisk failing(*disk);
        failing.fail_at(n);
        const std::string text = told([&] { write_file(failing, folder / "a", "new"); });
        INFO("call " << n << ": " << (failing.calls().empty() ? "" : failing.calls().back()) << ": " << text);
        CHECK(disk->list(folder.path()) == std::vector<std::string>{"a"});
        const std::string now = read_text(*disk, folder / "a", 10);
        if (text.empty()) {
            CHECK(now == "new");
            CHECK(n > 5);  // remove, create, write, close, rename and the folder's sync can fail
            break;
        }
        CHECK((now == "old" || now == "new"));
        REQUIRE(n < 50);
    }
}
