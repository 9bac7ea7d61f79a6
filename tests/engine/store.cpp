// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/store.h"

#include "base/digest.h"
#include "base/fault.h"
#include "engine/store_files.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <sys/stat.h>

using namespace qw;
using namespace qw::engine;

namespace {

struct StorePlace {
    test::TestFolder folder;
    std::unique_ptr<Disk> disk = real_disk();
    Path stored = folder / "store";
    Store store{*disk, stored};

    FileDigest put(const std::string& text) { return put(store, *disk, text); }
    static FileDigest put(Store& into, Disk& through, const std::string& text) {
        const Path file = into.scratch();
        const auto sink = through.create(file);
        sink->write(text);
        sink->close();
        return into.put(file);
    }
    std::string text(const Path& path) { return read_text(*disk, path, 1 << 20); }
    /// As someone does who takes the trouble to write to a read-only file.
    void spoil(const FileDigest& file, const std::string& bytes) {
        std::filesystem::permissions(store.path(file.sha256), std::filesystem::perms::owner_write, std::filesystem::perm_options::add);
        disk->extend(store.path(file.sha256), 0)->write(bytes);
    }
};

FileDigest digest_for(const std::string& text) { return {text.size(), sha256_of(text)}; }

std::string code_told(const std::function<void()>& act) {
    try {
        act();
        return "";
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        return fault.notes().front().code;
    }
}

/// Every file under a digest's name has that digest.
void check_whole(Disk& disk, const Path& stored) {
    if (!disk.stat(stored)) return;
    for (const std::string& begin : disk.list(stored)) {
        if (begin.size() != 2) continue;
        for (const std::string& rest : disk.list(stored / begin)) REQUIRE(digest_of(disk, stored / begin / rest).sha256 == begin + rest);
    }
}

/// A disk on which one call does not work, as on file systems that cannot.
struct NoLinks : test::FaultDisk {
    explicit NoLinks(Disk& inner) : FaultDisk(inner) {}
    void link(const Path&, const Path& to) override { throw Fault(FaultKind::not_carried_out, {"disk", {to.string(), 0, 0}, "no links here", "", ""}); }
};

}  // namespace

TEST_CASE("what is put lies under its digest, read-only, and is taken by another name for the same file") {
    StorePlace place;
    const FileDigest abc = place.put("abc");
    // NIST, "SHA-256 example (one block message)".
    CHECK(abc.sha256 == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(abc.bytes == 3);
    const Path lies = place.stored / "ba/7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    CHECK(place.store.path(abc.sha256) == lies);
    CHECK(place.text(lies) == "abc");
    struct stat st {};
    REQUIRE(::stat(lies.c_str(), &st) == 0);
    CHECK((st.st_mode & 0777) == 0444);
    CHECK(place.store.has(abc));
    CHECK(place.store.is_sound(abc));
    CHECK_FALSE(place.store.has(digest_for("abd")));

    const Path out = place.folder / "out";
    CHECK_FALSE(place.store.is_linked(abc, out));
    place.store.take(abc, out);
    CHECK(place.text(out) == "abc");
    CHECK(place.store.is_linked(abc, out));
    CHECK(place.disk->stat(out)->links == 2);
    CHECK(code_told([&] { place.store.take(abc, out); }) == "disk");
    CHECK(place.text(out) == "abc");
    CHECK(place.disk->list(place.stored / "new").empty());
}

TEST_CASE("equal bytes lie there once and keep their other names") {
    StorePlace place;
    const FileDigest abc = place.put("abc");
    place.store.take(abc, place.folder / "out");
    CHECK(place.put("abc").sha256 == abc.sha256);
    CHECK(place.store.is_linked(abc, place.folder / "out"));
    CHECK(place.disk->list(place.stored / "new").empty());
    CHECK(place.store.sizes().linked == 3);
}

TEST_CASE("a copy is put of what others may change, and the original stays as it was") {
    StorePlace place;
    write_file(*place.disk, place.folder / "art", "picture");
    const FileDigest art = place.store.put_copy(place.folder / "art");
    place.disk->extend(place.folder / "art", 0)->write("PICTURE");
    CHECK(place.text(place.store.path(art.sha256)) == "picture");
    CHECK(place.store.is_sound(art));
    CHECK(place.disk->stat(place.folder / "art")->links == 1);
}

TEST_CASE("where links do not work a read-only copy is taken") {
    StorePlace place;
    const FileDigest abc = place.put("abc");
    NoLinks disk(*place.disk);
    Store store(disk, place.stored);
    store.take(abc, place.folder / "out");
    CHECK(place.text(place.folder / "out") == "abc");
    CHECK_FALSE(store.is_linked(abc, place.folder / "out"));
    struct stat st {};
    REQUIRE(::stat((place.folder / "out").c_str(), &st) == 0);
    CHECK((st.st_mode & 0777) == 0444);
    CHECK(code_told([&] { store.take(abc, place.folder / "out"); }) == "disk");
}

TEST_CASE("a stored file of a wrong size is not trusted, one of wrong bytes is found when it is looked at, and both are mended") {
    StorePlace place;
    const FileDigest abc = place.put("abc"), xyz = place.put("xyz");
    place.spoil(abc, "ab");
    CHECK_FALSE(place.store.has(abc));
    CHECK(code_told([&] { place.store.take(abc, place.folder / "out"); }) == "damaged-store");
    CHECK_FALSE(place.disk->stat(place.folder / "out"));
    place.spoil(xyz, "XYZ");
    CHECK(place.store.has(xyz));
    CHECK_FALSE(place.store.is_sound(xyz));
    std::vector<std::string> both{abc.sha256, xyz.sha256};
    std::sort(both.begin(), both.end());
    CHECK(place.store.damaged() == both);
    place.put("abc");
    place.put("xyz");
    CHECK(place.store.damaged().empty());
    CHECK(place.text(place.store.path(xyz.sha256)) == "xyz");
    place.store.remove(abc.sha256);
    CHECK_FALSE(place.store.has(abc));
    CHECK(code_told([&] { place.store.take(abc, place.folder / "out"); }) == "damaged-store");
}

TEST_CASE("wherever putting fails or is killed, every file under a digest's name is whole, and the next run puts it") {
    for (const bool killed : {false, true}) {
        bool ended = false;
        std::size_t steps = 0;
        for (std::size_t n = 1; !ended; ++n) {
            StorePlace place;
            write_file(*place.disk, place.folder / "art", "art");
            test::FaultDisk failing(*place.disk);
            if (killed) failing.stop_at(n, [&] { check_whole(*place.disk, place.stored); });
            else failing.fail_at(n);
            ended = true;
            try {
                Store store(failing, place.stored);
                const FileDigest one = StorePlace::put(store, failing, "one");
                StorePlace::put(store, failing, "two");
                StorePlace::put(store, failing, "one");
                const FileDigest art = store.put_copy(place.folder / "art");
                store.pin("kept", {one, art});
                store.take(one, place.folder / "out");
                store.save();
                store.clean_up(0);
            } catch (const Fault&) {
                ended = false;
            } catch (const test::Stopped&) {
                ended = false;
            }
            ended = ended && failing.changes() < n;  // a link that fails is made up for by a copy
            steps = n;
            INFO((killed ? "killed" : "failed") << " at " << n << ": " << (failing.calls().empty() ? "" : failing.calls().back()));
            check_whole(*place.disk, place.stored);
            Store next(*place.disk, place.stored);
            for (const Store::Pin& pin : next.pins())
                for (const FileDigest& file : pin.files) REQUIRE(next.is_sound(file));
            const FileDigest again = StorePlace::put(next, *place.disk, "one");
            REQUIRE(next.is_sound(again));
            REQUIRE(place.disk->list(place.stored / "new").empty());
            REQUIRE(n < 200);
        }
        CHECK(steps > 30);
    }
}

TEST_CASE("cleaning away takes what was used longest ago, and neither what is pinned nor what has another name") {
    StorePlace place;
    const std::string hundred(100, 'x');
    const auto put_in_a_run = [&](char c) {
        Store store(*place.disk, place.stored);
        const FileDigest file = StorePlace::put(store, *place.disk, hundred + c);
        store.save();
        return file;
    };
    const FileDigest a = put_in_a_run('a'), b = put_in_a_run('b'), c = put_in_a_run('c'), d = put_in_a_run('d'), e = put_in_a_run('e');
    // Which of the two comes first by its digest is the one that is used again.
    const FileDigest& used = d.sha256 < e.sha256 ? d : e;
    const FileDigest& unused = d.sha256 < e.sha256 ? e : d;
    Store store(*place.disk, place.stored);
    store.pin("one-1.0.0", {a, b});
    store.pin("two-1.0.0", {b});
    store.take(c, place.folder / "out");
    store.take(b, place.folder / "out-b");  // pinned and linked: counts once
    store.use(used.sha256);
    store.save();

    Store later(*place.disk, place.stored);
    const Store::Sizes before = later.sizes();
    CHECK(before.pinned == 202);
    CHECK(before.linked == 101);
    CHECK(before.own == 202);
    CHECK(later.clean_up(202).removed == 0);
    const Store::Sizes one_less = later.clean_up(201);
    CHECK(one_less.removed == 101);
    CHECK(one_less.files_removed == 1);
    CHECK(one_less.own == 101);
    CHECK_FALSE(later.has(unused));
    CHECK(later.has(used));
    CHECK(later.clean_up(0).own == 0);
    CHECK_FALSE(later.has(used));
    for (const FileDigest& kept : {a, b, c}) CHECK(later.has(kept));
    later.unpin("one-1.0.0");
    later.unpin("two-1.0.0");
    std::filesystem::remove(place.folder / "out");
    later.clean_up(0);
    CHECK_FALSE(later.has(a));
    CHECK(later.has(b));
    CHECK_FALSE(later.has(c));
    CHECK(later.sizes().linked == 101);
}

TEST_CASE("pins tell what they keep, and one that cannot be read stops the cleaning") {
    StorePlace place;
    const FileDigest abc = place.put("abc"), xyz = place.put("xyzz");
    place.store.pin("kit-1.0.0", {xyz, abc, xyz});
    place.store.pin("kit-1.0.1", {abc});
    const auto pins = place.store.pins();
    REQUIRE(pins.size() == 2);
    CHECK(pins[0].name == "kit-1.0.0");
    CHECK(pins[0].bytes == 7);
    CHECK(pins[0].files.size() == 2);
    CHECK(pins[1].bytes == 3);
    const std::string begin = "quirewright pin 1\n" + abc.sha256 + " 3\n";
    CHECK(place.text(place.stored / "pins/kit-1.0.1") == begin + sha256_of(begin) + "\n");
    CHECK(code_told([&] { place.store.pin("kit-1.0.2", {digest_for("never put")}); }) == "damaged-store");
    for (const char* name : {"", ".x", "a/b", "a.part"}) CHECK(code_told([&] { place.store.pin(name, {abc}); }) == "bad-name");

    const Path pin = place.stored / "pins/kit-1.0.0";
    const std::string whole = place.text(pin);
    const FileDigest loose = place.put("loose");
    for (std::size_t length = 0; length < whole.size(); ++length) {
        place.disk->extend(pin, 0)->write(whole.substr(0, length));
        REQUIRE(code_told([&] { place.store.clean_up(0); }) == "damaged-store");
        std::string changed = whole;
        changed[length] = static_cast<char>(changed[length] ^ 1);
        place.disk->extend(pin, 0)->write(changed);
        REQUIRE(code_told([&] { place.store.clean_up(0); }) == "damaged-store");
    }
    CHECK(place.store.has(loose));
    write_file(*place.disk, pin, "quirewright pin 2\nwho knows\n");
    CHECK(code_told([&] { place.store.clean_up(0); }) == "newer-store");
    CHECK(place.store.has(loose));
    write_file(*place.disk, pin, whole);
    place.store.clean_up(0);
    CHECK_FALSE(place.store.has(loose));
    CHECK(place.store.has(xyz));
}

TEST_CASE("lost or torn uses cost the order alone") {
    StorePlace place;
    const FileDigest abc = place.put("abc"), xyz = place.put("xyz");
    place.store.save();
    const std::string whole = place.text(place.stored / "uses");
    for (std::size_t length = 0; length < whole.size(); ++length) {
        place.disk->extend(place.stored / "uses", 0)->write(whole.substr(0, length));
        Store store(*place.disk, place.stored);
        store.use(abc.sha256);
        REQUIRE(store.clean_up(3).removed == 3);
        REQUIRE(store.has(abc));
        StorePlace::put(store, *place.disk, "xyz");
        REQUIRE(store.has(xyz));
    }
    write_file(*place.disk, place.stored / "uses", "quirewright uses 2\n");
    Store store(*place.disk, place.stored);
    CHECK(code_told([&] { store.clean_up(0); }) == "newer-store");
    CHECK(store.has(abc));
}

TEST_CASE("a run that only looks writes nothing, and what is no stored file is left alone") {
    StorePlace place;
    test::FaultDisk disk(*place.disk);
    Store store(disk, place.stored);
    CHECK(store.sizes().own == 0);
    CHECK(store.pins().empty());
    CHECK(store.damaged().empty());
    store.use(digest_for("abc").sha256);
    store.save();
    CHECK(disk.changes() == 0);
    place.put("abc");
    write_file(*place.disk, place.stored / "new/7", "what a killed run left");
    write_file(*place.disk, place.stored / "README", "someone's note");
    write_file(*place.disk, place.stored / "ba/note", "another");
    Store(*place.disk, place.stored).clean_up(0);
    CHECK_FALSE(place.disk->stat(place.stored / "new"));
    CHECK(place.text(place.stored / "README") == "someone's note");
    CHECK(place.text(place.stored / "ba/note") == "another");
}
