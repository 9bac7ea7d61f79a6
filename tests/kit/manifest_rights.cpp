// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/example.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const std::string stated = "rights: { made-by: the studio, allowed-by: own work, since: 2026-03-01 }\n";

}  // namespace

TEST_CASE("rights are read for the kit, for a set and for fonts") {
    ExampleKit example;
    const kit::Manifest none = example.read(sound_manifest);
    CHECK_FALSE(none.rights);
    CHECK(none.rights_of(none.sets[0]) == nullptr);
    const kit::Manifest manifest = example.read(sound_manifest + stated + "fonts: { Any-Bold: { made-by: A. Maker, allowed-by: a licence 1.0 } }\n");
    CHECK(manifest.rights_of(manifest.sets[0])->text() == "made by the studio; own work; since 2026-03-01");
    CHECK(manifest.fonts.at("Any-Bold").text() == "made by A. Maker; a licence 1.0");
}

TEST_CASE("rights that are half stated are refused") {
    ExampleKit example;
    CHECK(told(example.faults(sound_manifest + with(stated, ", allowed-by: own work", ""))).starts_with("missing-key"));
    CHECK(told(example.faults(sound_manifest + with(stated, "allowed-by", "allowed-bye"))).starts_with("unknown-key"));
    CHECK(told(example.faults(sound_manifest + with(stated, "2026-03-01", "yesterday"))).starts_with("bad-date"));
    CHECK(told(example.faults(sound_manifest + "rights: own work\n")).starts_with("wrong-type"));
}
