// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "texts/render.h"

#include <catch2/catch.hpp>

#include <functional>

using namespace qw;
using texts::Model;
using texts::render;

namespace {

std::vector<FaultNote> faults_of(const std::function<void()>& work) {
    try {
        work();
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        return fault.notes();
    }
    return {};
}

Model sheet() {
    Model m;
    m.text("title", "Knots & \"bends\" <1>").truth("has-covers", false);
    m.list("pieces", {Model().text("piece", "board"), Model().text("piece", "liner")});
    return m;
}

}  // namespace

TEST_CASE("names are filled in and nothing is escaped") {
    CHECK(render("Of {{title}}.", "a", sheet()) == "Of Knots & \"bends\" <1>.");
    CHECK(render("{{ title }}", "a", sheet()) == "Knots & \"bends\" <1>");
}

TEST_CASE("sections repeat, see outward, and can be inverted") {
    CHECK(render("{{#pieces}}{{piece}} of {{title}};{{/pieces}}", "a", sheet()) ==
          "board of Knots & \"bends\" <1>;liner of Knots & \"bends\" <1>;");
    CHECK(render("{{#has-covers}}yes{{/has-covers}}{{^has-covers}}no{{/has-covers}}", "a", sheet()) == "no");
    CHECK(render("a{{! a remark with {curly} signs }}b", "a", sheet()) == "ab");
}

TEST_CASE("every missing name is told with file, line and column, in the order of the file") {
    const auto faults = faults_of([] { render("één {{titel}}\n{{#pieces}}{{pece}}{{/pieces}}\n{{zzz}}", "texts/a.mustache", sheet(), 10); });
    REQUIRE(faults.size() == 3);
    CHECK(faults[0].code == "unknown-name");
    CHECK(faults[0].where.file == "texts/a.mustache");
    CHECK(faults[0].where.line == 10);
    CHECK(faults[0].where.column == 5);  // characters, not bytes
    CHECK(faults[0].mend == "write 'title'");
    CHECK(faults[1].where.line == 11);
    CHECK(faults[1].where.column == 12);
    CHECK(faults[1].mend == "write 'piece'");
    CHECK(faults[2].where.line == 12);
}

TEST_CASE("a name is missing where it is out of reach, though another place has it") {
    const auto faults = faults_of([] { render("{{#pieces}}{{piece}}{{/pieces}}\n{{piece}}", "a", sheet()); });
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].where.line == 2);
}

TEST_CASE("a list or a truth is no text") {
    const auto faults = faults_of([] { render("{{pieces}} {{has-covers}}", "a", sheet()); });
    REQUIRE(faults.size() == 2);
    CHECK(faults[0].code == "not-a-text");
}

TEST_CASE("a section on an unknown name is a fault, inverted or not") {
    CHECK(faults_of([] { render("{{#has-cover}}x{{/has-cover}}", "a", sheet()); }).size() == 1);
    CHECK(faults_of([] { render("{{^has-cover}}x{{/has-cover}}", "a", sheet()); }).size() == 1);
}

TEST_CASE("broken tags are told together") {
    const auto faults = faults_of([] { render("{{#pieces}}\n{{/title}}\n{{> other}}\n{{=<% %>=}}\n{{{title}}}\n{{a.b}}", "a", sheet()); });
    REQUIRE(faults.size() == 6);
    CHECK(faults[0].code == "unopened-section");
    CHECK(faults[0].where.line == 2);
    CHECK(faults[1].code == "bad-tag");
    CHECK(faults[4].where.line == 6);
    CHECK(faults[5].code == "unclosed-section");
    CHECK(faults[5].where.line == 1);
    CHECK(faults_of([] { render("a\n b {{title", "a", sheet()); }).at(0).where.line == 2);
}

TEST_CASE("what a name says is not read as a text again") {
    Model m;
    m.text("title", "{{other}}");
    CHECK(render("{{title}}", "a", m) == "{{other}}");
}
