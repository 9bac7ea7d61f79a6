// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/fractions.h"

#include <array>
#include <utility>

namespace qw::compose {

namespace {

using Figures = std::array<const char*, 10>;
constexpr Figures superior{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
constexpr Figures inferior{"₀", "₁", "₂", "₃", "₄", "₅", "₆", "₇", "₈", "₉"};
constexpr const char* slash = "⁄";
constexpr const char* thin_space = "\u2009";
constexpr const char* times = "×";

std::string in_figures(const std::string& digits, const Figures& figures) {
    std::string set;
    for (const char c : digits) set += figures[static_cast<std::size_t>(c - '0')];
    return set;
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

bool digit_before(const std::string& text, std::size_t at) { return at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9'; }

/// Superior numerator, slash, inferior denominator → "5/8"; a digit before it gets a space between.
std::string composed_to_plain(const std::string& text) {
    const auto figure_at = [&](std::size_t at, const Figures& figures) {
        for (std::size_t d = 0; d < figures.size(); ++d)
            if (text.compare(at, std::string(figures[d]).size(), figures[d]) == 0) return static_cast<int>(d);
        return -1;
    };
    std::string plain;
    bool open = false;
    for (std::size_t at = 0; at < text.size();) {
        if (const int d = figure_at(at, superior); d >= 0) {
            if (!open && digit_before(plain, plain.size())) plain += ' ';
            open = true;
            plain += static_cast<char>('0' + d);
            at += std::string(superior[static_cast<std::size_t>(d)]).size();
            continue;
        }
        open = false;
        if (const int d = figure_at(at, inferior); d >= 0) {
            plain += static_cast<char>('0' + d);
            at += std::string(inferior[static_cast<std::size_t>(d)]).size();
        } else {
            plain += text[at++];
        }
    }
    return plain;
}

}  // namespace

std::string real_fractions(const std::string& ascii) {
    const auto digit = [&](std::size_t at) { return at < ascii.size() && ascii[at] >= '0' && ascii[at] <= '9'; };
    const auto digits_end = [&](std::size_t at) {
        while (digit(at)) ++at;
        return at;
    };
    std::string set;
    /// "3/8" with its numerator at `from`; true: it is there, and the end of it is left in `at`.
    const auto fraction = [&](std::size_t from, std::size_t& at) {
        const std::size_t bar = digits_end(from);
        if (!digit(from) || bar >= ascii.size() || ascii[bar] != '/' || !digit(bar + 1)) return false;
        at = digits_end(bar + 1);
        set += in_figures(ascii.substr(from, bar - from), superior) + slash + in_figures(ascii.substr(bar + 1, at - bar - 1), inferior);
        return true;
    };
    for (std::size_t at = 0; at < ascii.size();) {
        if (!digit(at)) {
            set += ascii[at++];
            continue;
        }
        const std::size_t first = at, end = digits_end(at), before = set.size();
        if (end < ascii.size() && ascii[end] == ' ' && digit(end + 1)) {
            set += ascii.substr(first, end - first) + thin_space;
            if (fraction(end + 1, at)) continue;
            set.resize(before);
        }
        if (fraction(first, at)) continue;
        set += ascii.substr(first, end - first);
        at = end;
        if (ascii.compare(end, 3, " x ") == 0 && digit(end + 3)) {
            set += " " + std::string(times) + " ";
            at = end + 3;
        }
    }
    // An x behind a fraction is not seen above, where its denominator was used up.
    for (const char* figure : inferior) replace_all(set, std::string(figure) + " x ", std::string(figure) + " " + times + " ");
    return set;
}

std::string plain_fractions(const std::string& set) {
    static const std::pair<const char*, const char*> single[] = {{"¼", "¹⁄₄"}, {"½", "¹⁄₂"}, {"¾", "³⁄₄"}, {"⅛", "¹⁄₈"},
                                                                {"⅜", "³⁄₈"}, {"⅝", "⁵⁄₈"}, {"⅞", "⁷⁄₈"}};
    std::string text = set;
    for (const auto& [sign, composed] : single) replace_all(text, sign, composed);
    replace_all(text, thin_space, " ");
    replace_all(text, "\u00a0", " ");
    text = composed_to_plain(text);
    replace_all(text, slash, "/");
    replace_all(text, times, "x");
    return text;
}

}  // namespace qw::compose
