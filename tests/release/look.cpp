// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/look.h"

#include <catch2/catch.hpp>

using namespace qw;

namespace {

const Path art = Path(QW_SOURCE_DIR) / "kits/lamplight-mini/art";

kit::ArtworkFile file(const std::string& name) {
    kit::ArtworkFile file;
    file.path = art / name;
    file.shown = "art/" + name;
    return file;
}

release::LookedSet looked(kit::Set set) {
    // `look` points into the manifest, which lives as long as the test.
    static std::vector<std::unique_ptr<kit::Manifest>> manifests;
    manifests.push_back(std::make_unique<kit::Manifest>());
    manifests.back()->sets.push_back(std::move(set));
    release::Progress silent;
    engine::Kept kept;
    return release::look(*real_disk(), *manifests.back(), kept, engine::Jobs(2), silent).front();
}

}  // namespace

TEST_CASE("a named last back that is a PDF gives its first page alone") {
    kit::Set set;
    set.role = kit::Role::journal_page;
    set.sides = kit::Sides::duplex;
    set.files = {file("cover.pdf")};
    const std::size_t faces = looked(set).faces.size();
    REQUIRE(faces % 2 == 1);
    set.last_back = kit::LastBack{file("pages.pdf"), {}};
    const release::LookedSet with_back = looked(set);
    REQUIRE(with_back.files[1].pdf.pages.size() == 8);
    REQUIRE(with_back.faces.size() == faces + 1);
    CHECK(with_back.faces.back().file == 1);
    CHECK(with_back.faces.back().page == 1);
    // Where the last sheet has its back already, no other is added.
    set.files = {file("pages.pdf")};
    set.last_back = kit::LastBack{file("cover.pdf"), {}};
    CHECK(looked(set).faces.size() == 8);
}
