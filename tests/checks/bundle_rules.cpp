// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/record_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const std::string a(64, 'a'), b(64, 'b');

bundle::Seen seen(const std::string& name, const std::string& digest, std::uint64_t bytes) {
    bundle::Seen file;
    file.name = name;
    file.sha256 = digest;
    file.bytes = bytes;
    return file;
}

/// Headers as its files ask for.
void put_headers(checks::PackedBundle& bundle) {
    bundle.content.structure.entries.clear();
    for (const bundle::Seen& file : bundle.content.entries) {
        bundle::EntryHeader header;
        header.name = file.name;
        header.size = header.packed = file.bytes;
        header.date = 0x21;
        bundle.content.structure.entries.push_back(header);
    }
}

checks::PackedBundle whole() {
    checks::PackedBundle bundle{"kit-1.0.0.zip", std::string(64, 'f'), 1000, {}};
    bundle.content.entries = {seen("a4/x.pdf", a, 10), seen("contents.txt", std::string(64, 'c'), 5), seen("letter/x.pdf", b, 10)};
    bundle.content.text = a + "  a4/x.pdf\n" + b + "  letter/x.pdf\n";
    return bundle;
}

record::ReleaseRecord record_of() {
    record::ReleaseRecord record;
    record.kit = "kit";
    record.version = "1.0.0";
    record.bundles.push_back({"kit-1.0.0.zip", 1000, std::string(64, 'f'), 3});
    for (const bundle::Seen& file : whole().content.entries)
        record.files.push_back({file.name, "kit-1.0.0.zip", file.bytes, file.sha256, "extra", std::nullopt, std::nullopt, 1});
    return record;
}

Findings alone(checks::PackedBundle bundle) {
    put_headers(bundle);
    Findings findings;
    checks::check_bundle(rules(), bundle, findings);
    return findings;
}

Findings with_record(const checks::PackedBundle& bundle) {
    Findings findings;
    checks::check_record(rules(), record_of(), {bundle}, findings);
    return findings;
}

}  // namespace

TEST_CASE("a bundle is held against its own list of contents") {
    CHECK(alone(whole()).empty());
    checks::PackedBundle bundle = whole();
    bundle.content.damage = "its end is missing";
    CHECK(times(alone(bundle), "bundle-damaged") == 1);
    bundle = whole();
    bundle.content.entries[0].sha256[3] = '0';
    CHECK(times(alone(bundle), "bundle-digests") == 1);
    bundle = whole();
    bundle.content.entries.push_back(seen("extra.pdf", a, 1));
    CHECK(times(alone(bundle), "bundle-complete") == 1);
    bundle = whole();
    bundle.content.entries.pop_back();
    CHECK(times(alone(bundle), "bundle-complete") == 1);
    bundle = whole();
    bundle.recorded = true;
    bundle.content.text.clear();
    CHECK(times(alone(bundle), "bundle-complete") == 2);
    bundle = whole();
    bundle.content.text += "no digest\n";
    CHECK(times(alone(bundle), "bundle-complete") == 1);
}

TEST_CASE("of a bundle that others made only what can be known is said") {
    checks::PackedBundle bundle = whole();
    bundle.content.text = "What is in this kit: pages, covers, tags.\n";
    bundle.content.entries[0].name = "My Kit/Page 1.pdf";
    CHECK_FALSE(bundle.ours());
    CHECK(alone(bundle).empty());
    bundle.recorded = true;
    CHECK(times(alone(bundle), "bundle-names") == 1);
    // The sheets that every bundle of ours has tell it as well.
    bundle = whole();
    bundle.content.text.clear();
    CHECK_FALSE(bundle.ours());
    bundle.content.entries[0].name = "letter/print-check.pdf";
    bundle.content.entries[2].name = "letter/measurements.pdf";
    CHECK(bundle.ours());
    CHECK(times(alone(bundle), "bundle-complete") == 2);
}

TEST_CASE("names that differ in case only, or that a system refuses, are told") {
    checks::PackedBundle bundle = whole();
    bundle.content.entries.push_back(seen("A4/X.pdf", a, 10));
    bundle.content.text += a + "  A4/X.pdf\n";
    CHECK(times(alone(bundle), "bundle-name-doubles") == 1);
    CHECK(times(alone(bundle), "bundle-names") == 1);
}

TEST_CASE("a bundle is held against the record of its release") {
    CHECK(with_record(whole()).empty());
    checks::PackedBundle bundle = whole();
    bundle.sha256[0] = '0';
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    bundle = whole();
    bundle.bytes = 999;
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    bundle = whole();
    bundle.content.entries.erase(bundle.content.entries.begin());
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    CHECK(times(with_record(bundle), "record-complete") == 1);
    bundle = whole();
    bundle.content.entries[0].sha256 = b;
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    bundle = whole();
    bundle.content.entries[0].bytes = 11;
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    Findings findings;
    checks::check_record(rules(), record_of(), {}, findings);
    CHECK(times(findings, "record-agrees") == 1);
}

TEST_CASE("what a record says of a file is what its path says") {
    const std::string letter = "na_letter_8.5x11in";
    const auto of = [&](const std::string& path, const std::string& role, std::optional<std::string> paper, std::optional<std::string> print) {
        record::ReleaseRecord record = record_of();
        record.files = {{path, "kit-1.0.0.zip", 10, a, role, std::move(paper), std::move(print), 1}};
        Findings findings;
        checks::check_record_itself(rules(), record, shared_data().papers, findings);
        return times(findings, "record-roles");
    };
    CHECK(of("letter/borderless/pages.pdf", "journal-page", letter, "borderless") == 0);
    CHECK(of("letter/borderless/pages.pdf", "journal-page", letter, "bordered") == 1);
    CHECK(of("letter/borderless/pages.pdf", "journal-page", "iso_a4_210x297mm", "borderless") == 1);
    CHECK(of("letter/borderless/pages.pdf", "guide", letter, "borderless") == 1);
    CHECK(of("letter/guide.pdf", "guide", letter, std::nullopt) == 0);
    CHECK(of("letter/guide.pdf", "part", letter, std::nullopt) == 1);
    CHECK(of("contents.txt", "contents", std::nullopt, std::nullopt) == 0);
}

TEST_CASE("a shop's limits hold to the byte") {
    kit::Shop shop;
    shop.most_files = 1;
    shop.most_bytes_a_file = 1000;
    const auto of = [&](const std::vector<checks::PackedBundle>& bundles, const kit::Shop* limits) {
        Findings findings;
        checks::check_shop(rules(), limits, bundles, findings);
        return times(findings, "shop-limits");
    };
    CHECK(of({whole()}, &shop) == 0);
    CHECK(of({whole(), whole()}, &shop) == 1);
    CHECK(of({whole(), whole()}, nullptr) == 0);
    shop.most_bytes_a_file = 999;
    CHECK(of({whole()}, &shop) == 1);
}
