// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/publish_sample.h"

#include "base/digest.h"
#include "release/publish.h"

#include <fstream>
#include <sstream>

namespace qw::release::sample {

Digests digests_of(const Path& folder) {
    Digests digests;
    if (!std::filesystem::exists(folder)) return digests;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        const std::string name = entry.path().lexically_relative(folder).string();
        if (entry.is_directory()) {
            digests[name + "/"] = "";
            continue;
        }
        std::ostringstream bytes;
        bytes << std::ifstream(entry.path(), std::ios::binary).rdbuf();
        digests[name] = sha256_of(bytes.str());
    }
    return digests;
}

void fill(Disk& disk, const Path& staging, Edition edition) {
    const auto put = [&](const Path& path, const std::string& text) {
        const auto sink = disk.create(path);
        sink->write(text);
        sink->write(text);
        sink->close();
    };
    const std::string words = edition == Edition::old ? "the old tide table" : "the new tide table";
    put(staging / "mini-1.0.0.zip", words);
    disk.make_folders(staging / "listing" / "pictures");
    put(staging / "listing" / "shop.txt", words + " in a shop");
    put(staging / "listing" / "pictures" / (edition == Edition::old ? "one.png" : "two.png"), words);
    disk.link(staging.parent_path().parent_path().parent_path() / "kept", staging / "terms.txt");
    put(staging / "release.json", words + " recorded");
}

House::House(bool first) {
    const auto disk = real_disk();
    std::ofstream(folder / "kept") << "kept in a store";
    const auto digests = [&](Edition edition) {
        const Path like = folder / "like" / "a" / "b";
        disk->make_folders(like);
        disk->link(folder / "kept", folder / "like" / "kept");
        fill(*disk, like, edition);
        const Digests seen = digests_of(like);
        disk->remove(folder / "like");
        return seen;
    };
    anew = digests(Edition::anew);
    if (first) return;
    Publication publication(*disk, out(), "mini", "1.0.0");
    fill(*disk, publication.staging(), Edition::old);
    publication.publish();
    before = digests_of(shown());
}

void House::publish_anew(Disk& disk) const {
    Publication publication(disk, out(), "mini", "1.0.0");
    fill(disk, publication.staging(), Edition::anew);
    publication.publish();
}

bool House::whole() const {
    const Digests seen = digests_of(shown());
    return seen == before || seen == anew;
}

std::string House::leftovers() const {
    std::string names;
    if (!std::filesystem::exists(out() / "mini")) return names;
    for (const std::string& name : real_disk()->list(out() / "mini"))
        if (name != ".lock" && name != "1.0.0") names += name + " ";
    return names;
}

}  // namespace qw::release::sample
