// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/signed_proofs.h"

#include "base/fault.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::kit;

namespace {

SignedProof blank(const std::string& file, bool two_sides) {
    SignedProof proof;
    proof.version = "1.0.0";
    proof.file = file;
    proof.pages = two_sides ? std::vector<int>{1, 2} : std::vector<int>{3};
    proof.sha256 = std::string(64, 'a');
    proof.digests.assign(proof.pages.size(), std::string(64, '1'));
    proof.asks_gauge = proof.asks_offset = two_sides;
    return proof;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    REQUIRE(text.find(from) != std::string::npos);
    return text.replace(text.find(from), from.size(), to);
}

std::string form() { return form_of("kit", {blank("letter/print-check.pdf", true)}); }

std::string filled() {
    std::string text = form();
    for (const auto& [from, to] :
         {std::pair("printed-by:\n", "printed-by: Wren\n"), std::pair("    printer:\n", "    printer: bench inkjet\n"),
          std::pair("    stock:\n", "    stock: copy, 100 g/m2\n"), std::pair("    setting:\n", "    setting: 100 %, short edge\n"),
          std::pair("    gauge:\n", "    gauge: 7 15/16 in\n"), std::pair("    offset:\n", "    offset: { x: 0.5 mm, y: -1 mm }\n"),
          std::pair("    date:\n", "    date: 2026-09-02\n"), std::pair("    verdict:\n", "    verdict: good\n")})
        text = replaced(text, from, to);
    return text;
}

/// Code and line of the first fault.
std::pair<std::string, int> refused(const std::string& text) {
    try {
        read_signed_proofs(text, "proofs.yaml");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        CHECK(fault.notes().front().where.file == "proofs.yaml");
        CHECK(fault.notes().front().where.column > 0);
        return {fault.notes().front().code, fault.notes().front().where.line};
    }
    return {"", 0};
}

int line_of(const std::string& text, const std::string& words) {
    return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(text.find(words)), '\n'));
}

}  // namespace

TEST_CASE("A form reads back as it was written, and nothing is signed") {
    const SignedProofs read = read_signed_proofs(form_of("kit", {blank("letter/print-check.pdf", true), blank("a4/borderless/tags.pdf", false)}), "proofs.yaml");
    CHECK(read.kit == "kit");
    REQUIRE(read.proofs.size() == 2);
    CHECK(read.proofs[0].pages == std::vector<int>{1, 2});
    CHECK(read.proofs[0].digests.size() == 2);
    CHECK(read.proofs[0].asks_gauge);
    CHECK_FALSE(read.proofs[1].asks_offset);
    CHECK_FALSE(read.proofs[1].good);
    CHECK(read.proofs[1].file == "a4/borderless/tags.pdf");
}

TEST_CASE("What is filled in is read") {
    const SignedProof proof = read_signed_proofs(filled(), "proofs.yaml").proofs.at(0);
    CHECK(proof.printed_by == "Wren");
    CHECK(proof.setting == "100 %, short edge");
    CHECK(proof.gauge == Length::inches(7.9375));
    CHECK(proof.offset->x == Length::mm(0.5));
    CHECK(proof.offset->y == -Length::mm(1));
    CHECK(proof.date->iso() == "2026-09-02");
    CHECK(proof.good == true);
}

TEST_CASE("What is wrong is refused where it stands") {
    const auto check = [](const std::string& from, const std::string& to, const std::string& code) {
        INFO(to);
        const std::string text = replaced(filled(), from, to);
        CHECK(refused(text) == std::pair(code, line_of(text, to.substr(0, to.find('\n')))));
    };
    check("    stock: copy", "    stok: none\n    stock: copy", "unknown-key");
    check("    gauge: 7 15/16 in", "    gauge: 200", "bare-number");
    check("    date: 2026-09-02", "    date: 2026-02-30", "bad-date");
    check("    verdict: good", "    verdict: fine", "unknown-word");
    check("    sha256: 'aa", "    sha256: 'xa", "bad-digest");
    check("    printer: bench inkjet\n", "    printer:\n", "not-filled-in");
    check("format: 1", "format: 2", "out-of-range");
    CHECK(refused(replaced(filled(), "    verdict: good", "    verdict:")).first.empty());
}

TEST_CASE("Further sheets are added at the end, and what stands there stays byte for byte") {
    for (const std::string& before : {form(), filled(), filled().substr(0, filled().size() - 1), replaced(filled(), "kit: kit", "kit: kit   # ours"),
                                      std::string("format: 1\nkit: kit\nproofs:\n") + filled().substr(filled().find("  - "))}) {
        const std::string after = with_blanks(before, "proofs.yaml", {blank("a4/gauges.pdf", false)});
        CHECK(after.substr(0, before.size()) == before);
        const SignedProofs read = read_signed_proofs(after, "proofs.yaml");
        REQUIRE(read.proofs.size() == 2);
        CHECK(read.proofs[1].file == "a4/gauges.pdf");
    }
    CHECK(with_blanks(filled(), "proofs.yaml", {}) == filled());
}

TEST_CASE("A list written at the edge, or with the line ends of Windows, is added to in its own way") {
    std::string flush, windows;
    for (const std::string& text = filled(); const char c : text) windows += c == '\n' ? "\r\n" : std::string(1, c);
    CHECK(read_signed_proofs(with_blanks(windows, "proofs.yaml", {blank("a4/gauges.pdf", false)}), "proofs.yaml").proofs.size() == 2);
    bool in_list = false;
    std::string line;
    for (const char c : filled()) {
        line += c;
        if (c != '\n') continue;
        if (line.starts_with("  ")) in_list = true;
        flush += in_list ? line.substr(2) : line;
        line.clear();
    }
    CHECK(read_signed_proofs(with_blanks(flush, "proofs.yaml", {blank("a4/gauges.pdf", false)}), "proofs.yaml").proofs.size() == 2);
}

TEST_CASE("Where nothing can be added at the end that is told and nothing is lost") {
    const std::string keys_below = "format: 1\nproofs:\n" + filled().substr(filled().find("  - ")) + "kit: kit\n";
    CHECK(read_signed_proofs(keys_below, "proofs.yaml").proofs.size() == 1);
    CHECK_THROWS_AS(with_blanks(keys_below, "proofs.yaml", {blank("a4/gauges.pdf", false)}), Fault);
}
