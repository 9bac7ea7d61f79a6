// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/grouped.h"
#include "report/html.h"
#include "report/measures_report.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace qw;

namespace {

Finding finding(const std::string& rule, Level level, const std::string& file, int page = 0) {
    return {rule, level, file, page, 0, "1 mm", "2 mm", "It is <too> short", "Make it \"longer\""};
}

std::size_t occurrences(const std::string& text, const std::string& part) {
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

}  // namespace

TEST_CASE("errors make a subject unfit, warnings only when they count") {
    report::AuditReport report;
    report.findings = {finding("a", Level::note, "x"), finding("b", Level::warning, "x")};
    CHECK(report.fit_for_sale());
    report.strict = true;
    CHECK_FALSE(report.fit_for_sale());
    report.strict = false;
    report.findings.push_back(finding("c", Level::error, "x"));
    CHECK_FALSE(report.fit_for_sale());
    CHECK(nlohmann::json::parse(report::to_json(report))["fit_for_sale"] == false);
}

TEST_CASE("forty pages with one fault are told once, worst first") {
    Findings findings{finding("mild", Level::note, "z.png")};
    for (int i = 1; i <= 40; ++i) findings.push_back(finding("bad", Level::error, "p.pdf", i));
    const auto groups = report::grouped(findings);
    REQUIRE(groups.size() == 2);
    CHECK(groups[0].finding.rule == "bad");
    CHECK(groups[0].places.size() == 40);
    CHECK(groups[0].places[4] == "p.pdf, page 5");
    report::AuditReport report;
    report.subject = "kit 1.0.0";
    report.findings = findings;
    const std::string text = report::to_text(report);
    CHECK(occurrences(text, "It is <too> short") == 2);
    CHECK(text.find("and 36 more") != std::string::npos);
    CHECK(text.find("40 errors, no warnings, 1 note") != std::string::npos);
    // The document for programs keeps every one.
    CHECK(nlohmann::json::parse(report::to_json(report))["findings"].size() == 41);
}

TEST_CASE("nothing from a kit can become markup, and the page stands alone") {
    report::AuditReport report;
    report.title = "<script>alert(1)</script>";
    report.subject = "kit & co";
    report.findings = {finding("a", Level::error, "art/<img src=x onerror=alert(1)>.png")};
    const std::string html = report::to_html(report);
    CHECK(html.find("<script") == std::string::npos);
    CHECK(html.find("<img src=x") == std::string::npos);
    CHECK(html.find("kit &amp; co") != std::string::npos);
    CHECK(html.find("http://") == std::string::npos);
    CHECK(html.find("https://") == std::string::npos);
    CHECK(html.find("Not fit for sale") < html.find("What to do"));
}

TEST_CASE("base64 as RFC 4648 section 10 shows it") {
    const auto of = [](const std::string& text) { return report::base64(std::as_bytes(std::span(text.data(), text.size()))); };
    CHECK(of("") == "");
    CHECK(of("f") == "Zg==");
    CHECK(of("fo") == "Zm8=");
    CHECK(of("foo") == "Zm9v");
    CHECK(of("foob") == "Zm9vYg==");
    CHECK(of("fooba") == "Zm9vYmE=");
    CHECK(of("foobar") == "Zm9vYmFy");
}

TEST_CASE("faults are told with all their fields") {
    const Fault fault(FaultKind::not_understood, {{"unknown-key", {"kit.yaml", 3, 5}, "unknown key 'sids'", "a key", "write 'sides'"}, {"x", {}, "y", "", ""}});
    const auto json = nlohmann::json::parse(report::faults_json(fault));
    REQUIRE(json["faults"].size() == 2);
    CHECK(json["faults"][0] == nlohmann::json({{"code", "unknown-key"},
                                               {"file", "kit.yaml"},
                                               {"line", 3},
                                               {"column", 5},
                                               {"what", "unknown key 'sids'"},
                                               {"expected", "a key"},
                                               {"mend", "write 'sides'"}}));
}
