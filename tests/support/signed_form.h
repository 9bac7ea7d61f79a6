// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace qw::test {

struct Signature {
    std::string a4 = "200 mm", letter = "8 in", offset = "{ x: 0 mm, y: 0 mm }", verdict = "good";
};

/// A form for signed proofs (src/kit/signed-proofs.md) with all its blanks filled in alike.
inline std::string signed_form(const std::string& form, const Signature& as) {
    std::string text, line;
    bool a4 = false;
    for (const char c : form) {
        line += c;
        if (c != '\n') continue;
        if (line.starts_with("    file: ")) a4 = line.starts_with("    file: a4/");
        const std::vector<std::pair<std::string, std::string>> values{
            {"printed-by", "Wren"}, {"printer", "bench inkjet"}, {"stock", "as asked"},  {"setting", "100 %"}, {"gauge", a4 ? as.a4 : as.letter},
            {"offset", as.offset},  {"date", "2026-09-02"},      {"verdict", as.verdict}};
        for (const auto& [key, value] : values)
            if (line == "    " + key + ":\n") line = "    " + key + ": " + value + "\n";
        text += line;
        line.clear();
    }
    return text;
}

}  // namespace qw::test
