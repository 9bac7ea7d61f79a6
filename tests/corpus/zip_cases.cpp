// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with the bytes and names of a zip, whoever made it. Headers are written by hand around a page of the clean kit.
#include "corpus/cases.h"

#include "bundle/sample.h"

#include <zlib.h>

namespace qw::corpus {

namespace {

using bundle::sample::Around;
using bundle::sample::deflated;
using bundle::sample::little;
using bundle::sample::Odd;
using bundle::sample::unicode_path;
using bundle::sample::with_descriptor;

using Entries = std::vector<Odd>;

constexpr std::uint16_t utf8 = 0x0800;

/// A bundle that another program packed: a page, and what is odd.
Change foreign(const Entries& more, const Around& around = {}) {
    return [=](Work& work) {
        Entries entries{{"My Kit/Page 1.pdf", work.read(work.release() / "letter/borderless/pages.pdf")}};
        entries.insert(entries.end(), more.begin(), more.end());
        const std::string zip = bundle::sample::odd_zip(entries, around);
        work.spoil_zip = [zip](std::string& bytes) { bytes = zip; };
    };
}

Odd text(const std::string& name, std::uint16_t flags = 0) { return {name, "A text beside the pages.\n", 0, flags}; }
Odd bytes(const std::string& name, const std::string& data) { return {name, data}; }
template <typename Set>
Odd set(Odd entry, Set change) {
    change(entry);
    return entry;
}
Odd dated(std::uint16_t date, std::uint16_t time) {
    return set(text("notes.txt"), [=](Odd& entry) { entry.date = date; entry.time = time; });
}
Odd of_type(std::uint32_t mode, std::uint8_t made_on) {
    return set(text("notes.txt"), [=](Odd& entry) { entry.attributes = mode << 16; entry.made_on = made_on; });
}

/// So many zeros as deflate packs them, nearly 1 to 1000.
Odd zeros(std::size_t mebibytes) {
    const std::string block(std::size_t{1} << 20, '\0');
    std::string packed(mebibytes * 2048 + 4096, '\0');
    z_stream stream{};
    deflateInit2(&stream, 9, Z_DEFLATED, -15, 8, Z_DEFAULT_STRATEGY);
    stream.next_out = reinterpret_cast<Bytef*>(packed.data());
    stream.avail_out = static_cast<uInt>(packed.size());
    std::uint32_t crc = 0;
    for (std::size_t i = 0; i < mebibytes; ++i) {
        stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(block.data()));
        stream.avail_in = static_cast<uInt>(block.size());
        deflate(&stream, i + 1 == mebibytes ? Z_FINISH : Z_NO_FLUSH);
        crc = static_cast<std::uint32_t>(crc32(crc, reinterpret_cast<const Bytef*>(block.data()), static_cast<uInt>(block.size())));
    }
    packed.resize(stream.total_out);
    deflateEnd(&stream);
    Odd entry{"night.txt", packed, 8, 0, static_cast<std::uint32_t>(mebibytes << 20)};
    entry.crc = crc;
    return entry;
}

/// Just inside or just beyond what a bundle may inflate to: 64 MiB, and 200 times what it packs. A mebibyte of zeros takes
/// about 1020 bytes.
Change inflating(bool beyond) {
    return [=](Work& work) {
        const std::size_t page = work.read(work.release() / "letter/borderless/pages.pdf").size(), mebibyte = std::size_t{1} << 20;
        const std::size_t most = (64 * mebibyte + 200 * page - page) / (mebibyte - 200 * 1020);
        foreign({zeros(beyond ? most + 2 : most - 2)})(work);
    };
}

Entries many(int count) {
    Entries entries;
    for (int i = 1; i < count; ++i) entries.push_back(bytes("tides/" + std::to_string(i), "x"));
    return entries;
}

/// Sizes in the extra field of ZIP64 (APPNOTE 4.5.3).
Odd in_zip64() {
    return set(text("notes.txt"), [](Odd& entry) {
        entry.extra = little(1, 2) + little(16, 2) + little(entry.data.size(), 8) + little(entry.data.size(), 8);
        entry.all_ones = true;
    });
}

/// An entry whose bytes lie in another's: its own header and data are the other's data.
Change nested_in_data() {
    return [](Work& work) {
        const Odd inner = text("inner.txt");
        const std::string header = bundle::sample::odd_zip({inner}).substr(0, 30 + inner.name.size() + inner.data.size());
        Odd again = inner;
        const std::string page = work.read(work.release() / "letter/borderless/pages.pdf");
        again.at = static_cast<std::uint32_t>(30 + std::string("My Kit/Page 1.pdf").size() + page.size() + 30 + std::string("outer.txt").size() + 5);
        foreign({bytes("outer.txt", "text " + header), again})(work);
    };
}

std::string tar_like() { return "page 1.png" + std::string(247, '\0') + "ustar" + std::string(250, '\0'); }

void add_packing(const std::function<void(const char*, Change, Change)>& add) {
    add("bundle-encrypted", foreign({{"notes.txt", "0123456789abcdef and more", 0, 1}}), foreign({deflated("notes.txt", "packed as tightly as can be", 6)}));
    add("bundle-method", foreign({{"notes.txt", "BZh9 would follow", 12}}), foreign({deflated("notes.txt", "a plain block")}));
    add("bundle-method", foreign({{"notes.txt", "LZMA would follow", 14}}), foreign({deflated("notes.txt", "x")}));
    add("bundle-descriptors", foreign({with_descriptor(text("notes.txt"))}), foreign({with_descriptor(deflated("notes.txt", "a stream"))}));
    add("bundle-inflates", inflating(true), inflating(false));
    add("bundle-zip64", foreign(many(65535)), foreign(many(65534)));
    add("bundle-zip64", foreign({in_zip64()}),
        foreign({set(text("notes.txt"), [](Odd& entry) { entry.extra = little(0x5455, 2) + little(5, 2) + little(1, 1) + little(1700000000, 4); })}));
}

void add_agreement(const std::function<void(const char*, Change, Change)>& add) {
    const auto spoilt = [](auto change) { return foreign({set(text("notes.txt"), change)}); };
    const Change streamed = foreign({with_descriptor(deflated("notes.txt", "a stream"), false)});
    add("bundle-headers-agree", spoilt([](Odd& entry) { entry.local_name = "other.txt"; }), streamed);
    add("bundle-headers-agree", spoilt([](Odd& entry) { entry.local_size = 7; }), foreign({with_descriptor(deflated("notes.txt", "a stream"))}));
    add("bundle-headers-agree", foreign({set(with_descriptor(deflated("notes.txt", "a stream")), [](Odd& entry) { entry.behind[5] ^= 1; })}), streamed);
    add("bundle-overlap", nested_in_data(), foreign({text("notes.txt"), text("tides.txt")}, {"", "", "", true}));
    const Change padded = spoilt([](Odd& entry) { entry.local_extra = little(0xd935, 2) + little(40, 2) + std::string(40, '\0'); });
    add("bundle-stray-bytes", foreign({}, {"what stands before it", "", "", false}), padded);
    add("bundle-stray-bytes", foreign({}, {"", "what stands behind it", "", false}), padded);
    add("bundle-stray-bytes", foreign({set(text("notes.txt"), [](Odd& entry) { entry.behind = "what stands between"; }), text("tides.txt")}), padded);
    const Change timed = spoilt([](Odd& entry) { entry.extra = little(0x5455, 2) + little(5, 2) + little(1, 1) + little(1700000000, 4); });
    add("bundle-comment", foreign({}, {"", "", "packed on the old machine", false}), timed);
    add("bundle-comment", spoilt([](Odd& entry) { entry.comment = "second try"; }), timed);
    // 2107-12-31 23:59:58 is the last moment of these fields (Microsoft, FileTimeToDosDateTime).
    add("bundle-dates", foreign({dated(0, 0)}), foreign({dated(0xff9f, 0xbf7d)}));
    add("bundle-dates", foreign({dated(43 << 9 | 2 << 5 | 29, 0)}), foreign({dated(44 << 9 | 2 << 5 | 29, 0)}));
    add("bundle-dates", foreign({dated(0x21, 24 << 11)}), foreign({dated(0x21, 23 << 11 | 59 << 5 | 29)}));
}

void add_content(const std::function<void(const char*, Change, Change)>& add) {
    add("bundle-special-files", foreign({of_type(0120777, 3)}), foreign({of_type(0120777, 0)}));
    add("bundle-special-files", foreign({of_type(0010644, 19)}), foreign({of_type(0100755, 19)}));
    add("bundle-programs", foreign({text("set up.exe")}), foreign({text("exe.txt")}));
    add("bundle-programs", foreign({bytes("notes.txt", "#!/bin/sh\necho ahoy\n")}), foreign({bytes("notes.txt", "#! is what sailors say\n")}));
    add("bundle-programs", foreign({bytes("page.pdf.dat", "MZ" + std::string(62, '\0') + "PE")}), foreign({bytes("notes.txt", "MZ " + std::string(80, 'z'))}));
    add("bundle-programs", foreign({bytes("fonts", "\x7f" "ELF" + std::string(60, '\1'))}), foreign({bytes("fonts", "ELF" + std::string(60, '\1'))}));
    add("bundle-nested", foreign({text("more pages.zip")}), foreign({text("zip codes.txt")}));
    add("bundle-nested", foreign({bytes("bonus.dat", bundle::sample::odd_zip({text("bonus.txt")}))}),
        foreign({bytes("letter.docx", bundle::sample::odd_zip({text("word/document.xml")}))}));
    add("bundle-nested", foreign({bytes("bonus", tar_like())}), foreign({bytes("bonus", tar_like().substr(1))}));
    add("bundle-empty-file", foreign({bytes("notes.txt", "")}), foreign({bytes("notes.txt", "x")}));
    add("bundle-folder-entries", foreign({bytes("Covers/", "")}), foreign({bytes("Covers/", ""), text("Covers/notes.txt")}));
    add("bundle-folder-entries", foreign({bytes("My Kit/", "hidden")}), foreign({bytes("My Kit/", "")}));
    add("bundle-litter", foreign({text("__MACOSX/My Kit/._Page 1.pdf")}), foreign({text("My Kit/_Page 1.txt")}));
    add("bundle-litter", foreign({text("My Kit/.DS_Store")}), foreign({text("My Kit/DS_Store.txt")}));
}

void add_names(const std::function<void(const char*, Change, Change)>& add) {
    add("bundle-name-doubles", foreign({text("Notes.txt"), text("notes.txt")}), foreign({text("notes 1.txt"), text("notes 2.txt")}));
    add("bundle-name-doubles", foreign({text("\xc3\x89t\xc3\xa9.txt", utf8), text("\xc3\xa9t\xc3\xa9.txt", utf8)}),
        foreign({text("\xc3\xa8t\xc3\xa9.txt", utf8), text("\xc3\xa9t\xc3\xa9.txt", utf8)}));
    add("bundle-name-doubles", foreign({text("notes.txt"), text("notes.txt")}), foreign({text("notes.txt"), text("My Kit/notes.txt")}));
    add("bundle-name-doubles", foreign({text("my kit")}), foreign({text("my kit.txt")}));
    add("bundle-name-utf8", foreign({text("caf\xe9.txt", utf8)}), foreign({text("caf\xc3\xa9.txt", utf8)}));
    add("bundle-name-unmarked", foreign({text("caf\xc3\xa9.txt")}),
        foreign({set(text("caf\x82.txt"), [](Odd& entry) { entry.extra = unicode_path("caf\x82.txt", "caf\xc3\xa9.txt"); })}));
    // The field holds for the name that it was made for alone.
    add("bundle-name-unmarked", foreign({set(text("caf\x82.txt"), [](Odd& entry) { entry.extra = unicode_path("old.txt", "caf\xc3\xa9.txt"); })}),
        foreign({text("cafe.txt")}));
    add("bundle-name-composed", foreign({text("cafe\xcc\x81.txt", utf8)}), foreign({text("caf\xc3\xa9.txt", utf8)}));
    add("bundle-name-portable", foreign({text("My Kit/What now?.txt")}), foreign({text("My Kit/What now!.txt")}));
    add("bundle-name-portable", foreign({text("My Kit/aux.txt")}), foreign({text("My Kit/auxiliary.txt")}));
    add("bundle-name-portable", foreign({text("My Kit/Notes.")}), foreign({text("My Kit/Notes. ...txt")}));
    add("bundle-name-portable", foreign({text("My Kit\\notes.txt")}), foreign({text("My Kit/(notes) & [tides].txt")}));
    add("bundle-name-escapes", foreign({text("../notes.txt")}), foreign({text("..notes/a..txt")}));
    add("bundle-name-escapes", foreign({text("/notes.txt")}), foreign({text("notes/notes.txt")}));
    add("bundle-name-escapes", foreign({text("My Kit/../../notes.txt")}), foreign({text("My Kit/notes...txt")}));
    // C:\Users\ 20 letters \Downloads\ corpus-1.0.0 \ are 53 characters.
    add("bundle-path-length", foreign({text(std::string(100, 'a') + "/" + std::string(102, 'b') + ".txt")}),
        foreign({text(std::string(100, 'a') + "/" + std::string(101, 'b') + ".txt")}));
}

}  // namespace

void add_zip_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near) { cases.push_back({rule, Subject::zip, std::move(defect), std::move(near), ""}); };
    add_packing(add);
    add_agreement(add);
    add_content(add);
    add_names(add);
}

}  // namespace qw::corpus
