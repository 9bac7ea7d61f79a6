// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a bundle, its list of contents and the record beside it.
#include "corpus/cases.h"

#include "bundle/sample.h"

namespace qw::corpus {

namespace {

Packed text(const std::string& name) { return {name, "A text beside the sheets.\n"}; }

Change with_entry(const Packed& entry) {
    return [=](Work& work) { work.bundle().push_back(entry); };
}

/// The zip's bytes, changed where the directory's last header tells of it.
Change in_last_header(std::size_t at, char flipped) {
    return [=](Work& work) { work.spoil_zip = [=](std::string& zip) { zip[zip.rfind("PK\1\2") + at] ^= flipped; }; };
}

Change in_contents(const std::function<void(std::string&)>& change) {
    return [=](Work& work) {
        work.contents_follow = false;
        work.edit_bytes("contents.txt", change);
    };
}

void put_last_line_first(std::string& text) {
    const std::size_t at = text.rfind('\n', text.size() - 2) + 1;
    text = text.substr(at) + text.substr(0, at);
}

using Json = nlohmann::ordered_json;

Change in_record(const std::function<void(Json&)>& change) {
    return [=](Work& work) { work.spoil_record = change; };
}
Change in_file(const std::string& path, const std::string& key, const Json& value) {
    return in_record([=](Json& record) {
        for (Json& file : record["files"])
            if (file["path"] == path) file[key] = value;
    });
}

/// Every entry of the bundle is of this day, and the record follows.
Change packed_on(int year, int month, int day, int hour = 0) {
    return [=](Work& work) {
        work.bundle();
        work.spoil_zip = [=](std::string& zip) {
            const auto date = static_cast<std::uint16_t>((year - 1980) << 9 | month << 5 | day), time = static_cast<std::uint16_t>(hour << 11);
            const auto put = [&](std::size_t at) { zip.replace(at, 4, bundle::sample::little(time, 2) + bundle::sample::little(date, 2)); };
            std::size_t header = zip.rfind("PK\5\6");
            header = static_cast<std::size_t>(static_cast<unsigned char>(zip[header + 16])) |
                     static_cast<std::size_t>(static_cast<unsigned char>(zip[header + 17])) << 8 |
                     static_cast<std::size_t>(static_cast<unsigned char>(zip[header + 18])) << 16 |
                     static_cast<std::size_t>(static_cast<unsigned char>(zip[header + 19])) << 24;
            const auto number = [&](std::size_t at, int bytes) {
                std::size_t value = 0;
                while (bytes-- > 0) value = value << 8 | static_cast<unsigned char>(zip[at + static_cast<std::size_t>(bytes)]);
                return value;
            };
            for (; zip.compare(header, 4, "PK\1\2") == 0; header += 46 + number(header + 28, 2)) {
                put(header + 12);
                put(number(header + 42, 4) + 10);
            }
        };
    };
}

void add_record_cases(const std::function<void(const char*, Subject, Change, Change, const char*)>& add) {
    const Change by_another_tool = in_record([](Json& record) { record["tool"] = "quirewright 0.0.9"; });
    const Change fewer_inputs = in_record([](Json& record) { record["inputs"].erase(0); });
    add("record-agrees", Subject::release, in_file("letter/gauges.pdf", "sha256", std::string(64, 'a')), by_another_tool, "");
    add("record-agrees", Subject::release, in_file("letter/gauges.pdf", "bytes", 77), fewer_inputs, "");
    add("record-agrees", Subject::release, in_record([](Json& record) { record["bundles"][0]["sha256"] = std::string(64, 'a'); }), by_another_tool, "");
    add("record-agrees", Subject::release, in_record([](Json& record) { record["bundles"][0]["bytes"] = 77; }), fewer_inputs, "");
    add("record-agrees", Subject::release, [](Work& work) { work.spoil_record = [&work](Json&) { std::filesystem::remove(work.zip()); }; }, by_another_tool, "");
    add("record-agrees", Subject::release, [](Work& work) { work.write(work.release() / "letter/gauges.pdf", work.read(work.release() / "letter/guide.pdf")); },
        [](Work& work) { work.write(work.release() / "letter/gauges.pdf", work.read(work.release() / "letter/gauges.pdf")); }, "");
    add("record-readable", Subject::release, in_record([](Json& record) { record["format"] = 2; }),
        in_record([](Json& record) { record["inputs"][0]["rights"] = "by us, own work"; }), "");
    add("record-readable", Subject::release, in_record([](Json& record) { record["signed-by"] = "the studio"; }),
        in_record([](Json& record) { record["inputs"][0]["done"] = "looked at"; }), "");
    add("record-readable", Subject::release, [](Work& work) { work.write(work.release() / "release.json", "{ \"format\": 1"); }, by_another_tool, "");
    add("record-complete", Subject::release, in_record([](Json& record) { record["files"].erase(0); }), fewer_inputs, "");
    add("record-complete", Subject::release, in_record([](Json& record) { record["bundles"][0]["entries"] = 99; }), by_another_tool, "");
    add("record-complete", Subject::release, [](Work& work) { work.write(work.release() / "corpus-0.9.0.zip", work.read(work.zip())); },
        [](Work& work) { work.write(work.release() / "listing/zip.txt", "The zip holds all pages.\n"); }, "");
    add("record-roles", Subject::release, in_file("letter/gauges.pdf", "role", "cutting-plan"), in_file("letter/bordered/covers.pdf", "role", "extra"), "");
    add("record-roles", Subject::release, in_file("letter/bordered/hole-jig.pdf", "print", "borderless"), by_another_tool, "");
    add("record-pages", Subject::release, in_file("letter/gauges.pdf", "pages", 2), nullptr, "a number of pages is right or wrong; nothing is near it");
    add("record-kit", Subject::release, in_record([](Json& record) { record["version"] = "1.0.1"; }), [](Work& work) {
            work.spoil_record = [&work](Json& record) {
                const std::string name = "corpus-1.0.0-1-of-1.zip";
                std::filesystem::rename(work.zip(), work.release() / name);
                record["bundles"][0]["path"] = name;
                for (Json& file : record["files"]) file["bundle"] = name;
            };
        }, "");
    add("record-kit", Subject::published, in_record([](Json& record) { record["kit"] = "another"; }), by_another_tool, "");
    add("bundle-date-of-kit", Subject::published, packed_on(2026, 9, 2), packed_on(2026, 9, 1, 23), "");
}

}  // namespace

void add_bundle_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Subject subject, Change defect, Change near, const char* no_near = "") {
        cases.push_back({rule, subject, std::move(defect), std::move(near), no_near});
    };
    // Which program packed an entry, and whether it is thought a text, says nothing about its bytes (APPNOTE 4.4.2, 4.4.14).
    add("bundle-damaged", Subject::zip, [](Work& work) { work.spoil_zip = [](std::string& zip) { zip.resize(zip.size() - 10); }; }, in_last_header(36, 1));
    add("bundle-damaged", Subject::zip, [](Work& work) { work.spoil_zip = [](std::string& zip) { zip[zip.size() / 2] ^= 1; }; }, in_last_header(4, 1));
    add("bundle-damaged", Subject::zip, in_last_header(0, 1), in_last_header(6, 1));
    add("bundle-names", Subject::zip, with_entry(text("CON.pdf.txt")), with_entry(text("con-fig.txt")));
    add("bundle-names", Subject::zip, with_entry(text("Notes.txt")), with_entry(text("notes.txt")));
    add(
        "bundle-complete", Subject::zip,
        [](Work& work) {
            work.contents_follow = false;
            work.bundle().push_back(text("extra.txt"));
        },
        with_entry(text("extra.txt")));
    add("bundle-complete", Subject::zip, in_contents([](std::string& lines) { lines += std::string(64, 'a') + "  gone.txt\n"; }),
        in_contents([](std::string& lines) { lines.pop_back(); }));
    add("bundle-digests", Subject::zip, in_contents([](std::string& lines) { lines[0] = lines[0] == 'a' ? 'b' : 'a'; }), in_contents(put_last_line_first));
    add_record_cases(add);
    add("shop-limits", Subject::kit, [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: wrapped-booklet\nshop: tiny");
            work.replace(work.pipeline() / "shops.yaml", "shops:", "shops:\n  tiny: { title: Tiny, most-bytes-a-file: 100 kB, why: a limit that nothing keeps }");
        }, [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: wrapped-booklet\nshop: roomy");
            work.replace(work.pipeline() / "shops.yaml", "shops:", "shops:\n  roomy: { title: Roomy, most-bytes-a-file: 100 MB, why: a limit that all keep }");
        });
}

}  // namespace qw::corpus
