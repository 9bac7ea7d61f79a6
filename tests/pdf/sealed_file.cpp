// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/sealed_file.h"

#include "base/fault.h"
#include "pdf/fixtures.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <ostream>

using namespace qw;
using pdf::SealedFile;
using test::FaultDisk;
using test::TestFolder;

namespace {

const std::string zeros(32, '0'), other(32, 'A');

std::string trailer(const std::string& id) { return "trailer\n<</ID[<" + id + "><" + id + ">]/Size 3>>\nstartxref\n9\n%%EOF\n"; }

/// Bytes that do not repeat soon.
std::string noise(std::size_t size) {
    std::string text(size, '\0');
    std::uint32_t state = 1;
    for (char& c : text) c = static_cast<char>((state = state * 1664525 + 1013904223) >> 24);
    return text;
}

}  // namespace

TEST_CASE("the ID is the digest of the file with the ID zeroed") {
    const auto disk = real_disk();
    // Around the sizes at which bytes are gathered, kept back and passed straight through.
    for (const std::size_t size : {0u, 100u, 16383u, 16384u, 262143u, 262144u, 262145u, 1000000u}) {
        const TestFolder folder;
        const std::string body = noise(size);
        SealedFile file(*disk, folder / "a.pdf");
        std::ostream out(&file);
        out << body << trailer(other);
        const pdf::Drawn drawn = file.seal();
        const std::string id = sha256_of(body + trailer(zeros)).substr(0, 32);
        const std::string expected = body + trailer(id);
        CHECK((test::file_text(folder / "a.pdf") == expected));
        CHECK(drawn.bytes == expected.size());
        CHECK(drawn.sha256 == sha256_of(expected));
    }
}

TEST_CASE("what was written in pieces or with steps back is the same file") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::string body = noise(700000);
    SealedFile file(*disk, folder / "a.pdf");
    std::ostream out(&file);
    std::uint32_t state = 7;
    for (std::size_t at = 0; at < body.size();) {
        state = state * 1664525 + 1013904223;
        const std::size_t count = std::min<std::size_t>(body.size() - at, state % 5 == 0 ? state % 300000 : state % 50);
        out.write(body.data() + at, static_cast<std::streamsize>(count));
        at += count;
        if (at > 7 && state % 3 == 0) {
            out.seekp(static_cast<std::streamoff>(at - 7));
            out.put('?').seekp(-1, std::ios_base::cur).write(body.data() + at - 7, 7);
        }
        CHECK(out.tellp() == static_cast<std::streamoff>(at));
    }
    out << trailer(other);
    file.seal();
    CHECK((test::file_text(folder / "a.pdf").substr(0, body.size()) == body));
}

TEST_CASE("a step back behind what was passed on is refused, not guessed") {
    const auto disk = real_disk();
    const TestFolder folder;
    SealedFile file(*disk, folder / "a.pdf");
    std::ostream out(&file);
    out << noise(1000000);
    out.seekp(10);
    CHECK(out.fail());
}

TEST_CASE("a file that is not sealed is gone, and so is one without an ID") {
    const auto disk = real_disk();
    const TestFolder folder;
    {
        SealedFile file(*disk, folder / "a.pdf");
        std::ostream(&file) << "begun";
    }
    {
        SealedFile file(*disk, folder / "b.pdf");
        std::ostream(&file) << "trailer\n<</ID[<00><00>]>>";
        CHECK(test::refusal([&] { file.seal(); }, FaultKind::not_carried_out).code == "pdf-writer");
    }
    CHECK(disk->list(folder.path()).empty());
}

TEST_CASE("a disk's first failure is kept and told, whatever is written after it") {
    const auto real = real_disk();
    const TestFolder folder;
    FaultDisk disk(*real);
    disk.fail_write_at(1);
    {
        SealedFile file(disk, folder / "a.pdf");
        std::ostream out(&file);
        out << noise(1000000) << trailer(other);
        CHECK(out.good());
        CHECK(test::refusal([&] { file.check(); }, FaultKind::not_carried_out).code == "disk");
        CHECK(test::refusal([&] { file.seal(); }, FaultKind::not_carried_out).code == "disk");
    }
    CHECK(real->list(folder.path()).empty());
}
