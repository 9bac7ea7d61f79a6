// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/bundle_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const std::string a(64, 'a'), b(64, 'b');

checks::PackedBundle whole() {
    return {"kit-1.0.0.zip", "", std::string(64, 'f'), 1000, {{"a4/x.pdf", a, 10, ""}, {"contents.txt", std::string(64, 'c'), 5, ""}, {"letter/x.pdf", b, 10, ""}}, a + "  a4/x.pdf\n" + b + "  letter/x.pdf\n"};
}

record::ReleaseRecord record_of() {
    record::ReleaseRecord record;
    record.bundles.push_back({"kit-1.0.0.zip", 1000, std::string(64, 'f'), 3});
    record.files.push_back({"a4/x.pdf", "kit-1.0.0.zip", 10, a, "extra", std::nullopt, std::nullopt, 1});
    return record;
}

Findings alone(const checks::PackedBundle& bundle) {
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
    bundle.damage = "its end is missing";
    CHECK(times(alone(bundle), "bundle-damaged") == 1);
    bundle = whole();
    bundle.files[0].sha256[3] = '0';
    CHECK(times(alone(bundle), "bundle-digests") == 1);
    bundle = whole();
    bundle.files.push_back({"extra.pdf", a, 1, ""});
    CHECK(times(alone(bundle), "bundle-complete") == 1);
    bundle = whole();
    bundle.files.pop_back();
    CHECK(times(alone(bundle), "bundle-complete") == 1);
    bundle = whole();
    bundle.contents.clear();
    CHECK(times(alone(bundle), "bundle-complete") == 2);
    bundle = whole();
    bundle.contents += "no digest\n";
    CHECK(times(alone(bundle), "bundle-complete") == 1);
}

TEST_CASE("names that differ in case only, or that a system refuses, are told") {
    checks::PackedBundle bundle = whole();
    bundle.files.push_back({"A4/X.pdf", a, 10, ""});
    bundle.contents += a + "  A4/X.pdf\n";
    CHECK(times(alone(bundle), "bundle-names") == 1);
    bundle = whole();
    bundle.files[0].name_fault = "CON is a device";
    CHECK(times(alone(bundle), "bundle-names") == 1);
}

TEST_CASE("a bundle is held against the record of its release") {
    CHECK(with_record(whole()).empty());
    checks::PackedBundle bundle = whole();
    bundle.sha256[0] = '0';
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    bundle = whole();
    bundle.files.erase(bundle.files.begin());
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    bundle = whole();
    bundle.files[0].sha256 = b;
    CHECK(times(with_record(bundle), "record-agrees") == 1);
    Findings findings;
    checks::check_record(rules(), record_of(), {}, findings);
    CHECK(times(findings, "record-agrees") == 1);
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
