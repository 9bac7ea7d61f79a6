// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include "base/digest.h"
#include "base/fault.h"
#include "bundle/sample.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::bundle;
using qw::test::TestFolder;

namespace {

/// A file that lies in memory, so that thousands of damaged ones are read fast.
class MemoryDisk : public qw::test::FaultDisk {
public:
    MemoryDisk(Disk& inner, std::string bytes) : FaultDisk(inner), bytes_(std::move(bytes)) {}
    std::unique_ptr<Source> open(const Path&) override {
        struct Text : Source {
            const std::string& bytes;
            std::size_t& last;
            Text(const std::string& text, std::size_t& last_read) : bytes(text), last(last_read) {}
            std::uint64_t size() const override { return bytes.size(); }
            std::size_t read(std::uint64_t offset, std::span<std::byte> to) override {
                if (offset >= bytes.size()) return 0;
                const std::size_t n = std::min(to.size(), bytes.size() - static_cast<std::size_t>(offset));
                std::copy_n(std::as_bytes(std::span(bytes)).begin() + static_cast<std::ptrdiff_t>(offset), n, to.begin());
                last = static_cast<std::size_t>(offset) + n;
                return n;
            }
        };
        return std::make_unique<Text>(bytes_, last_read_);
    }
    /// Where the last read ended.
    std::size_t last_read() const { return last_read_; }

private:
    std::string bytes_;
    std::size_t last_read_ = 0;
};

Content read_bytes(const std::string& bytes) {
    const auto disk = real_disk();
    MemoryDisk memory(*disk, bytes);
    return read_zip(memory, "in-memory.zip");
}

std::string small_zip() {
    const auto disk = real_disk();
    const TestFolder folder;
    std::vector<Entry> entries = sample::small(folder.path());
    sample::put(folder / "pages", sample::noise(300));
    write_zip(*disk, folder / "o.zip", entries, sample::date);
    return sample::get(folder / "o.zip");
}

bool same(const Content& a, const Content& b) {
    return std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(), [](const Seen& x, const Seen& y) {
        return x.name == y.name && x.bytes == y.bytes && x.sha256 == y.sha256 && x.stored == y.stored;
    });
}

/// What is told of damage and of the structure.
std::string told(const Content& content) {
    std::string all = content.damage + content.inflates + content.structure.comment;
    for (const EntryHeader& entry : content.structure.entries) all += entry.disagrees + entry.comment;
    for (const Seen& seen : content.entries) all += seen.unread;
    for (const StrayBytes& stray : content.structure.stray) all += "stray " + std::to_string(stray.bytes);
    for (const auto& pair : content.structure.overlaps) all += "overlap " + std::to_string(pair.second);
    return all;
}

std::string damage_of(const std::vector<sample::Odd>& entries) { return read_bytes(sample::odd_zip(entries)).damage; }

}  // namespace

TEST_CASE("a zip cut off at any length is damaged") {
    const std::string whole = small_zip();
    REQUIRE(read_bytes(whole).damage == "");
    for (std::size_t length = 0; length < whole.size(); ++length) {
        INFO(length);
        CHECK(read_bytes(whole.substr(0, length)).damage != "");
    }
}

TEST_CASE("a flipped bit is damage, is told of the structure, or changes nothing that is told") {
    const std::string whole = small_zip();
    const Content good = read_bytes(whole);
    REQUIRE(told(good) == "");
    std::size_t noticed = 0;
    for (std::size_t bit = 0; bit < whole.size() * 8; ++bit) {
        std::string flipped = whole;
        flipped[bit / 8] = static_cast<char>(flipped[bit / 8] ^ (1 << (bit % 8)));
        const Content content = read_bytes(flipped);
        noticed += told(content).empty() ? 0 : 1;
        if (told(content).empty() && !same(content, good)) FAIL("bit " << bit << " of " << whole.size() * 8);
    }
    // What is left are fields that say nothing about the files: attributes, the version that packed them.
    CHECK(noticed > whole.size() * 8 * 9 / 10);
}

TEST_CASE("what is no zip is damaged, not a fault") {
    CHECK(read_bytes("").damage != "");
    CHECK(read_bytes("%PDF-1.7\n").damage != "");
    CHECK(read_bytes(sample::noise(100'000)).damage != "");
    CHECK(read_bytes("PK\5\6" + std::string(17, '\0')).damage != "");
}

TEST_CASE("a zip that cannot be opened is a fault, not damage") {
    const auto disk = real_disk();
    const TestFolder folder;
    CHECK_THROWS_AS(read_zip(*disk, folder / "gone.zip"), Fault);
    CHECK_THROWS_AS(read_zip(*disk, folder.path()), Fault);
}

TEST_CASE("a disk that fails while reading is a fault, not damage") {
    struct Failing : MemoryDisk {
        using MemoryDisk::MemoryDisk;
        std::size_t reads = 0, fail_at = 0;
        std::unique_ptr<Source> open(const Path& path) override {
            struct Broken : Source {
                std::unique_ptr<Source> whole;
                Failing& disk;
                Broken(std::unique_ptr<Source> source, Failing& owner) : whole(std::move(source)), disk(owner) {}
                std::uint64_t size() const override { return whole->size(); }
                std::size_t read(std::uint64_t offset, std::span<std::byte> to) override {
                    if (++disk.reads == disk.fail_at)
                        throw Fault(FaultKind::not_carried_out, {"disk", {"in-memory.zip", 0, 0}, "cannot read the file: broken", "", ""});
                    return whole->read(offset, to);
                }
            };
            return std::make_unique<Broken>(MemoryDisk::open(path), *this);
        }
    };
    const auto disk = real_disk();
    Failing counted(*disk, small_zip());
    REQUIRE(read_zip(counted, "o.zip").damage == "");
    REQUIRE(counted.reads > 5);
    for (std::size_t n = 1; n <= counted.reads; ++n) {
        Failing failing(*disk, small_zip());
        failing.fail_at = n;
        INFO(n);
        CHECK_THROWS_AS(read_zip(failing, "o.zip"), Fault);
    }
}

TEST_CASE("hostile names are told as they are") {
    const std::vector<std::string> names{"../../etc/passwd", "/abs", "C:\\x.exe", "a\\..\\b", "caf\xc3\xa9", "\xff\xfe", "dir/", "Con"};
    std::vector<sample::Odd> odd;
    for (const std::string& name : names) odd.push_back({name, name.back() == '/' ? "" : "x"});
    const Content content = read_bytes(sample::odd_zip(odd));
    REQUIRE(content.damage == "");
    REQUIRE(content.entries.size() == names.size());
    for (std::size_t i = 0; i < names.size(); ++i) {
        CHECK(content.entries[i].name == names[i]);
        CHECK(fault_in_name(content.entries[i].name) != "");
    }
    // A zero byte would end the name for some readers and not for others; it must not make a good name of a bad one.
    const Content zero = read_bytes(sample::odd_zip({{std::string("good.pdf\0.exe", 13), "x"}}));
    CHECK((zero.damage != "" || fault_in_name(zero.entries.at(0).name) != ""));
}

TEST_CASE("what is encrypted or packed by other methods is not read, and the rest is") {
    const Content content = read_bytes(sample::odd_zip({{"a", "0123456789abcdef", 0, 1}, {"b", "x", 12}, {"c", "abc"}, {"c", "abcd"}}));
    REQUIRE(content.damage == "");
    REQUIRE(content.entries.size() == 4);
    CHECK_THAT(content.entries[0].unread, Catch::Contains("encrypted"));
    CHECK_THAT(content.entries[1].unread, Catch::Contains("method 12"));
    CHECK(content.entries[2].bytes == 3);
    CHECK(content.entries[2].begins == "abc");
    CHECK(content.entries[3].bytes == 4);  // both of one name
    CHECK(damage_of({{"a", "x", 8}}) != "");
    CHECK_THAT(damage_of({{"a", "xyz", 0, 0, 2}}), Catch::Contains("'a'"));
}

std::string bomb_in(const std::vector<sample::Odd>& entries) { return read_bytes(sample::odd_zip(entries)).inflates; }

TEST_CASE("a zip that claims to be small and is not is never inflated") {
    CHECK_THAT(bomb_in({{"a", "x", 8, 0, 0xfffffffeu}}), Catch::Contains("inflate"));
    CHECK_THAT(bomb_in({{"a", "x", 8, 0, 65u << 20}}), Catch::Contains("inflate"));
    // Each one within bounds, all together not.
    std::vector<sample::Odd> many;
    for (int i = 0; i < 20; ++i) many.push_back({"f" + std::to_string(i), std::string(1000, 'x'), 8, 0, 60u << 20});
    CHECK_THAT(bomb_in(many), Catch::Contains("inflate"));
}

TEST_CASE("a real bomb is told") {
    const auto disk = real_disk();
    const TestFolder folder;
    sample::put(folder / "zeros", std::string(std::size_t{100} << 20, '\0'));
    write_zip(*disk, folder / "o.zip", {{"zeros.txt", folder / "zeros", false}}, sample::date);
    CHECK(std::filesystem::file_size(folder / "o.zip") < 200'000);
    CHECK_THAT(read_zip(*disk, folder / "o.zip").inflates, Catch::Contains("inflate"));
}

TEST_CASE("an entry that inflates to more than it says is damage") {
    // A stored deflate block (RFC 1951 3.2.4) of five bytes, said to be three.
    const std::string block = std::string("\x01\x05\x00\xfa\xff", 5) + "12345";
    CHECK(damage_of({{"a", block, 8, 0, 3}}) != "");

    // Three million bytes, said to be three: it is given up long before the end.
    const auto disk = real_disk();
    const TestFolder folder;
    sample::put(folder / "noise", sample::noise(3'000'000));
    write_zip(*disk, folder / "o.zip", {{"a", folder / "noise", false}}, sample::date);
    std::string zip = sample::get(folder / "o.zip");
    const std::string three("\3\0\0\0", 4);
    zip.replace(22, 4, three).replace(zip.rfind("PK\1\2") + 24, 4, three);
    MemoryDisk memory(*disk, zip);
    CHECK_THAT(read_zip(memory, "o.zip").damage, Catch::Contains("does not inflate to the size"));
    CHECK(memory.last_read() < 1'000'000);
}

TEST_CASE("entries that share their bytes are told") {
    // The first entry's data is a whole zip of one entry; its directory, written once more at the end, points into it.
    const std::string inner = sample::odd_zip({{"inner", std::string(5000, 'x')}});
    const std::size_t header_at = 30 + 5;  // of the first entry, whose name has five letters too
    std::string zip = sample::odd_zip({{"outer", inner}});
    std::string entry = inner.substr(inner.find("PK\1\2"), 46 + 5);
    entry[42] = static_cast<char>(header_at);
    std::string end = zip.substr(zip.size() - 22);
    end[8] = end[10] = 2;
    end[12] = static_cast<char>(2 * entry.size());
    zip = zip.substr(0, zip.size() - 22) + entry + end;
    CHECK(read_bytes(zip).structure.overlaps.size() == 1);
    // Two names for the same bytes.
    std::string twice = sample::odd_zip({{"a", std::string(500, 'x')}, {"b", std::string(500, 'x')}});
    twice.replace(twice.rfind("PK\1\2") + 42, 4, std::string(4, '\0'));
    CHECK(read_bytes(twice).structure.overlaps.size() == 1);
}

TEST_CASE("the wanted entry's bytes are kept, up to a mebibyte") {
    const std::string long_text = sample::noise((1 << 20) + 5);
    const std::string zip = sample::odd_zip({{"a.txt", "not this"}, {"contents.txt", "these bytes"}, {"long.txt", long_text}});
    const auto disk = real_disk();
    MemoryDisk memory(*disk, zip);
    CHECK(read_zip(memory, "o.zip", "contents.txt").text == "these bytes");
    CHECK(read_zip(memory, "o.zip", "long.txt").text == long_text.substr(0, 1 << 20));
    CHECK(read_zip(memory, "o.zip", "gone.txt").text == "");
    CHECK(read_zip(memory, "o.zip").text == "");
}

TEST_CASE("zips of other programs are read") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::string make =
        "import zipfile\n"
        "class Pipe:\n"
        "    def __init__(self, f): self.f = f\n"
        "    def write(self, b): return self.f.write(b)\n"
        "    def flush(self): self.f.flush()\n"
        "def fill(z):\n"
        "    z.writestr('tides.txt', 'high water\\n' * 500, zipfile.ZIP_DEFLATED)\n"
        "    z.writestr('plain.pdf', '%PDF', zipfile.ZIP_STORED)\n"
        "with zipfile.ZipFile('seekable.zip', 'w') as z: fill(z)\n"
        "with open('streamed.zip', 'wb') as f, zipfile.ZipFile(Pipe(f), 'w') as z: fill(z)\n";
    sample::put(folder / "make.py", make);
    const test::Said made = test::run("python3 make.py && zip -q tool.zip seekable.zip make.py", folder.path());
    INFO(made.text);
    REQUIRE(made.status == 0);
    for (const char* name : {"seekable.zip", "streamed.zip"}) {
        const Content content = read_zip(*disk, folder / name);
        INFO(name);
        CHECK(content.damage == "");
        REQUIRE(content.entries.size() == 2);
        CHECK(content.entries[0].bytes == 11 * 500);
        CHECK(content.entries[1].sha256 == sha256_of("%PDF"));
    }
    const Content tool = read_zip(*disk, folder / "tool.zip");
    CHECK(tool.damage == "");
    REQUIRE(tool.entries.size() == 2);
    CHECK(tool.entries[1].sha256 == sha256_of(make));
}
