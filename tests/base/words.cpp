// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;

TEST_CASE("the nearest word is one that was likely meant") {
    const std::vector<std::string> keys{"role", "files", "sides", "stock", "safe-area", "journal-page"};
    CHECK(nearest_word("sids", keys) == "sides");
    CHECK(nearest_word("fiels", keys) == "files");  // two letters that changed places are one slip
    CHECK(nearest_word("stokc", keys) == "stock");
    CHECK(nearest_word("journal_page", keys) == "journal-page");
    CHECK(nearest_word("safearea", keys) == "safe-area");
    CHECK(nearest_word("rol", keys) == "role");
    CHECK_FALSE(nearest_word("price", keys));
    CHECK_FALSE(nearest_word("", keys));
    CHECK_FALSE(nearest_word("role", {}));
    CHECK_FALSE(nearest_word(std::string(100'000, 'a'), keys));
    CHECK(nearest_word("role", keys) == "role");
}

TEST_CASE("lists are written out") {
    CHECK(listed({}) == "");
    CHECK(listed({"a"}) == "a");
    CHECK(listed({"a", "b"}) == "a or b");
    CHECK(listed({"a", "b", "c"}, "and") == "a, b and c");
}

TEST_CASE("natural order puts page-2 before page-10") {
    std::vector<std::string> names{"page-10", "page-2", "page-1", "Page-3", "page-02", "page-002b", "page-2a", "page", "10", "9", "é", "z"};
    std::sort(names.begin(), names.end(), natural_less);
    CHECK(names == std::vector<std::string>{"9", "10", "Page-3", "page", "page-1", "page-02", "page-2", "page-2a", "page-002b", "page-10", "z", "é"});
    CHECK(natural_less("1-99999999999999999999999", "1-100000000000000000000000"));  // beyond any machine's whole numbers
}

TEST_CASE("natural order is an order") {
    std::vector<std::string> all{""};
    for (std::size_t i = 0; i < all.size() && all[i].size() < 3; ++i)
        for (const char c : {'0', '1', '2', 'a', '-'}) all.push_back(all[i] + c);
    std::size_t bad = 0;
    for (const std::string& a : all)
        for (const std::string& b : all) {
            if (a == b ? natural_less(a, b) : natural_less(a, b) == natural_less(b, a)) ++bad;
            if (!natural_less(a, b)) continue;
            for (const std::string& c : all)
                if (natural_less(b, c) && !natural_less(a, c)) ++bad;
        }
    CHECK(bad == 0);
}

TEST_CASE("bytes that are not UTF-8 are found at their place") {
    // RFC 3629, section 4.
    for (const char* good : {"", "a", "é", "—", "🜚", "\xed\x9f\xbf", "\xee\x80\x80", "\xf4\x8f\xbf\xbf", "\xef\xbf\xbf"}) CHECK_FALSE(bad_utf8_at(good));
    CHECK_FALSE(bad_utf8_at(std::string("a\0b", 3)));
    const std::pair<const char*, std::size_t> table[] = {
        {"\x80", 0},         {"ab\xff", 2},        {"\xc0\x80", 0},         {"\xc1\xbf", 0},         {"\xe0\x9f\xbf", 0}, {"\xf0\x8f\xbf\xbf", 0},
        {"\xed\xa0\x80", 0}, {"é\xed\xbf\xbf", 2}, {"\xf4\x90\x80\x80", 0}, {"\xf5\x80\x80\x80", 0}, {"\xc3", 0},         {"a\xe2\x80", 1},
        {"\xf0\x9f\x9c", 0}, {"\xe2\x28\xa1", 0}};
    for (const auto& [text, at] : table) {
        INFO(at);
        CHECK(bad_utf8_at(text) == at);
    }
}

TEST_CASE("characters are counted, not bytes") {
    CHECK(characters_in("é—🜚a", 10) == 4);
    CHECK(characters_in("é—🜚a", 2) == 1);
    CHECK(characters_in("abc", 100) == 3);
    CHECK(characters_in("", 0) == 0);
}

TEST_CASE("plain names") {
    for (const char* name : {"a", "9", "tidewater-almanac", "a--b"}) CHECK(is_plain_name(name));
    for (const char* name : {"", "-", "-a", "a-", "A", "a_b", "a b", "a.b", "é", "a/b", ".."}) CHECK_FALSE(is_plain_name(name));
    CHECK(is_plain_name(std::string(64, 'a')));
    CHECK_FALSE(is_plain_name(std::string(65, 'a')));
}
