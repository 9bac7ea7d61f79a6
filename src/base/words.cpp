// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"

#include <algorithm>

namespace qw {

namespace {

std::size_t edits(const std::string& a, const std::string& b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t other = a[i - 1] == b[j - 1] ? 0 : 1;
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + other});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    }
    return d[a.size()][b.size()];
}

bool digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

std::optional<std::string> nearest_word(const std::string& written, const std::vector<std::string>& known) {
    if (written.size() > 64) return std::nullopt;
    std::optional<std::string> best;
    std::size_t fewest = std::max<std::size_t>(1, written.size() / 3) + 1;
    for (const std::string& word : known) {
        const std::size_t n = edits(written, word);
        if (n < fewest) {
            fewest = n;
            best = word;
        }
    }
    return best;
}

std::string listed(const std::vector<std::string>& words, const std::string& last) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " " + last + " " : ", ";
        text += words[i];
    }
    return text;
}

bool natural_less(std::string_view a, std::string_view b) {
    std::size_t i = 0, j = 0;
    while (i < a.size() && j < b.size()) {
        if (digit(a[i]) && digit(b[j])) {
            while (i < a.size() && a[i] == '0') ++i;
            while (j < b.size() && b[j] == '0') ++j;
            std::size_t ie = i, je = j;
            while (ie < a.size() && digit(a[ie])) ++ie;
            while (je < b.size() && digit(b[je])) ++je;
            if (ie - i != je - j) return ie - i < je - j;
            const int order = a.substr(i, ie - i).compare(b.substr(j, je - j));
            if (order != 0) return order < 0;
            i = ie;
            j = je;
        } else {
            if (a[i] != b[j]) return static_cast<unsigned char>(a[i]) < static_cast<unsigned char>(b[j]);
            ++i;
            ++j;
        }
    }
    if ((i < a.size()) != (j < b.size())) return j < b.size();
    return a < b;
}

std::optional<std::size_t> bad_utf8_at(std::string_view text) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
    for (std::size_t i = 0; i < text.size();) {
        const unsigned c = byte(i);
        const std::size_t more = c < 0x80 ? 0 : (c >= 0xc2 && c <= 0xdf) ? 1 : (c >= 0xe0 && c <= 0xef) ? 2 : (c >= 0xf0 && c <= 0xf4) ? 3 : 9;
        if (more == 9 || i + more >= text.size() + (more == 0 ? 1 : 0)) return i;
        for (std::size_t k = 1; k <= more; ++k)
            if ((byte(i + k) & 0xc0) != 0x80) return i;
        if (more == 2 && ((c == 0xe0 && byte(i + 1) < 0xa0) || (c == 0xed && byte(i + 1) > 0x9f))) return i;
        if (more == 3 && ((c == 0xf0 && byte(i + 1) < 0x90) || (c == 0xf4 && byte(i + 1) > 0x8f))) return i;
        i += more + 1;
    }
    return std::nullopt;
}

std::size_t characters_in(std::string_view text, std::size_t bytes) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < std::min(bytes, text.size()); ++i)
        if ((static_cast<unsigned char>(text[i]) & 0xc0) != 0x80) ++count;
    return count;
}

bool is_plain_name(std::string_view text) {
    if (text.empty() || text.size() > 64 || text.front() == '-' || text.back() == '-') return false;
    return std::all_of(text.begin(), text.end(), [](char c) { return (c >= 'a' && c <= 'z') || digit(c) || c == '-'; });
}

std::string spaced_name(std::string name) {
    std::replace(name.begin(), name.end(), '-', ' ');
    return name;
}

std::string in_lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return text;
}

bool is_device_name(std::string_view part) {
    const std::string stem = in_lower_case(std::string(part.substr(0, part.find('.'))));
    if (stem == "con" || stem == "prn" || stem == "aux" || stem == "nul") return true;
    return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt")) && stem[3] >= '1' && stem[3] <= '9';
}

std::string fault_on_windows(std::string_view part) {
    if (part.find_first_of("<>:\"|?*\\") != std::string_view::npos) return "it has a character that Windows forbids";
    if (std::any_of(part.begin(), part.end(), [](char c) { return static_cast<unsigned char>(c) < 32; })) return "it has a control character";
    if (part.ends_with(' ') || part.ends_with('.')) return "it ends in a space or a dot";
    if (is_device_name(part)) return "Windows keeps the name " + in_lower_case(std::string(part.substr(0, part.find('.')))) + " for a device";
    return "";
}

bool is_litter(std::string_view path) {
    const std::string_view name = path.substr(path.rfind('/') + 1);
    return name == ".DS_Store" || name == "Thumbs.db" || name == "desktop.ini" || name.starts_with("._") || name.ends_with("~") ||
           name.ends_with(".bak") || name.ends_with(".tmp");
}

}  // namespace qw
