// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/text_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

Findings bytes(const std::string& text, bool readable) {
    Findings findings;
    CHECK(checks::check_text_bytes(rules(), text, "listing.txt", findings) == readable);
    return findings;
}

Findings left_over(const std::string& text) {
    Findings findings;
    checks::check_text_left_over(rules(), text, "listing.txt", findings);
    return findings;
}

Findings in_shop(const kit::Shop& shop, const std::string& text, const std::string& title = "A kit") {
    Findings findings;
    checks::check_shop_text(rules(), &shop, text, title, "listing.txt", findings);
    return findings;
}

}  // namespace

TEST_CASE("a text is UTF-8 without control characters") {
    CHECK(bytes("Tide \u2013 tables\r\n\t24", true).empty());
    CHECK(bytes("\ufeffTide", true).empty());
    CHECK(times(bytes("one\ntwo \xff", false), "text-characters") == 1);
    CHECK(bytes("one\ntwo \xff", false)[0].line == 2);
    CHECK(times(bytes("one\x01", true), "text-characters") == 1);
    CHECK(times(bytes("one \ufffd", true), "text-characters") == 1);
    CHECK(times(bytes(std::string("\0\0\0", 3), true), "text-characters") == 1);
    CHECK(times(bytes(" \r\n", false), "text-empty") == 1);
    CHECK(times(bytes("", false), "text-empty") == 1);
}

TEST_CASE("what was to be filled in is told with its line") {
    for (const char* text : {"Size {{page}}", "TODO", "Lorem ipsum dolor", "xx pages", "[insert link]", "price ???", "ends }}"}) {
        INFO(text);
        const Findings findings = left_over(std::string("fine\n") + text);
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].rule == "text-placeholders");
        CHECK(findings[0].line == 2);
    }
    for (const char* text : {"6 x 8 in", "the mastodon exhibit", "size XXL", "a {brace}", "[printable]", "why??"}) {
        INFO(text);
        CHECK(left_over(text).empty());
    }
}

TEST_CASE("paths and addresses do not belong in a listing") {
    for (const char* text : {"see C:\\Users\\me", "/home/me/kit", "(/Users/me)", "file:///x", "me@studio.example", "\\\\server\\share"}) {
        INFO(text);
        CHECK(times(left_over(text), "text-private") == 1);
    }
    for (const char* text : {"A4/letter", "and/or", "@studio", "a: b", "1/home"}) {
        INFO(text);
        CHECK(left_over(text).empty());
    }
    CHECK(left_over(std::string(1 << 20, 'a')).empty());
}

TEST_CASE("a text fits the shop to the last byte") {
    kit::Shop shop;
    shop.longest_text = kit::TextLimit{10, true};
    CHECK(in_shop(shop, "0123456789").empty());
    CHECK(in_shop(shop, "0123456\u20ac").empty());  // a euro sign has three bytes
    CHECK(times(in_shop(shop, "01234567890"), "shop-text-length") == 1);
    CHECK(in_shop(shop, "01234567\u20ac")[0].measured == "11 bytes");
    shop.longest_text = kit::TextLimit{10, false};
    CHECK(in_shop(shop, "012345678\u20ac").empty());
    CHECK(in_shop(shop, "0123456789\u20ac")[0].measured == "11 characters");
    checks::check_shop_text(rules(), nullptr, std::string(100000, 'a'), "", "x", *std::make_unique<Findings>());
}

TEST_CASE("a title fits the shop, whether the text has one or not") {
    kit::Shop shop;
    shop.longest_title = kit::TextLimit{5, false};
    CHECK(in_shop(shop, "\n# Tides\nmore", "A kit of tides").empty());
    CHECK(times(in_shop(shop, "# Tidess\nmore"), "shop-title-length") == 1);
    CHECK(times(in_shop(shop, "Title: Tidess"), "shop-title-length") == 1);
    CHECK(in_shop(shop, "no title", "A kit").empty());
    CHECK(in_shop(shop, "no title", "A kit.")[0].file == "kit.yaml");
}

TEST_CASE("the shop's statements stand in one of their wordings") {
    kit::Shop shop;
    shop.statements = {{"nothing-shipped", {"nothing is shipped", "no physical item"}, "test"}};
    CHECK(in_shop(shop, "Files only, **nothing\nis  shipped**.").empty());
    CHECK(in_shop(shop, "NO PHYSICAL ITEM").empty());
    CHECK(times(in_shop(shop, "We ship it."), "shop-statements") == 1);
    // The shop of the shared data.
    CHECK(in_shop(*shared_data().shop("small-files"), "A digital download: nothing is shipped. The terms of use come with it.").empty());
    CHECK(in_shop(*shared_data().shop("small-files"), "A book.").size() == 3);
}
