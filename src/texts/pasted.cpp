// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/pasted.h"

#include "texts/plain_line.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <string_view>

namespace qw::texts {

namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

constexpr std::array<std::string_view, 21> small_numbers{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
                                                         "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"};
constexpr std::array<std::string_view, 8> tens{"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"};

std::optional<double> spelled(std::string_view word) {
    for (std::size_t i = 1; i < small_numbers.size(); ++i)
        if (word == small_numbers[i]) return static_cast<double>(i);
    for (std::size_t i = 0; i < tens.size(); ++i)
        if (word == tens[i]) return static_cast<double>((i + 2) * 10);
    if (word == "dozen") return 12.0;
    return std::nullopt;
}

/// "1,234" is a thousand and more, "21,6" has a decimal comma; with both marks the last one is the decimal one.
void read_figures(const std::string& written, Word& word) {
    const std::size_t comma = written.find(','), dot = written.find('.');
    std::string plain;
    std::size_t decimal = std::string::npos;
    if (comma != std::string::npos && dot != std::string::npos) {
        decimal = written.find_last_of(",.");
    } else if (dot != std::string::npos) {
        if (written.find('.', dot + 1) != std::string::npos) return;  // a version, or a date
        decimal = dot;
    } else if (comma != std::string::npos) {
        bool thousands = comma <= 3;
        for (std::size_t at = comma; at != std::string::npos; at = written.find(',', at + 1))
            thousands = thousands && std::min(written.find(',', at + 1), written.size()) - at == 4;
        if (!thousands && written.find(',', comma + 1) != std::string::npos) return;
        if (!thousands) decimal = comma;
    }
    for (std::size_t i = 0; i < written.size(); ++i) {
        if (is_digit(written[i])) plain += written[i];
        else if (i == decimal) plain += '.';
    }
    if (plain.size() > 12) return;  // no count and no size
    word.number = std::strtod(plain.c_str(), nullptr);
    if (decimal != std::string::npos) word.step = std::pow(10.0, -static_cast<double>(written.size() - decimal - 1));
}

class LineReader {
public:
    LineReader(const std::string& line, int number, std::vector<Word>& words) : line_(line), number_(number), words_(words) {}

    void read() {
        begin_ = words_.size();
        while (at_ < line_.size()) {
            const char c = line_[at_];
            if (is_digit(c)) figures();
            else if (is_letter(c)) letters();
            else mark(c);
        }
    }

private:
    char ahead(std::size_t by) const { return at_ + by < line_.size() ? line_[at_ + by] : ' '; }
    Word& add(std::string text) {
        Word word;
        word.text = std::move(text);
        word.line = number_;
        words_.push_back(std::move(word));
        return words_.back();
    }
    /// Whether the last word ended where the next begins.
    bool after_number() const { return words_.size() > begin_ && words_.back().number && !words_.back().in_words && at_ == number_end_; }

    void figures() {
        const std::size_t start = at_;
        while (is_digit(ahead(0)) || ((ahead(0) == '.' || ahead(0) == ',') && is_digit(ahead(1)))) ++at_;
        const std::string written = line_.substr(start, at_ - start);
        if (ahead(0) == '/' && is_digit(ahead(1)) && written.find_first_of(".,") == std::string::npos) return fraction(written);
        read_figures(written, add(written));
        number_end_ = at_;
    }

    /// "1/2", or the rest of "5 1/2" and "5-1/2".
    void fraction(const std::string& above) {
        const std::size_t start = ++at_;
        while (is_digit(ahead(0))) ++at_;
        const std::string below = line_.substr(start, at_ - start);
        const double parts = below.size() < 5 ? std::strtod(below.c_str(), nullptr) : 0;
        if (parts < 2 || parts > 64 || above.size() > 3) {
            add(above + "/" + below);
            return;
        }
        const double value = std::strtod(above.c_str(), nullptr) / parts;
        if (words_.size() > begin_ + 1 && words_.back().text == "-" && whole(words_[words_.size() - 2]) && value < 1) words_.pop_back();
        const bool mixed = words_.size() > begin_ && whole(words_.back()) && value < 1;
        Word& word = mixed ? words_.back() : add(above + "/" + below);
        if (mixed) word.text += " " + above + "/" + below;
        word.number = value + (mixed ? *word.number : 0);
        word.step = 1 / parts;
        word.fraction = true;
        number_end_ = at_;
    }
    static bool whole(const Word& word) { return word.number && !word.fraction && !word.in_words && word.step == 1; }

    void letters() {
        // "8.5x11": the x stands between two numbers.
        if (ahead(0) == 'x' && after_number() && (is_digit(ahead(1)) || ahead(1) == ' ')) {
            add("x");
            ++at_;
            return;
        }
        const std::size_t start = at_;
        while (is_letter(ahead(0)) || is_digit(ahead(0)) || (ahead(0) == '\'' && is_letter(ahead(1)))) ++at_;
        // "v1.0.2" is one word, so that its full stops end no sentence.
        if (line_[start] == 'v' && at_ > start + 1 && is_digit(line_[start + 1]))
            while (is_digit(ahead(0)) || (ahead(0) == '.' && is_digit(ahead(1)))) ++at_;
        std::string word = line_.substr(start, at_ - start);
        if (word == "g" && (line_.compare(at_, 3, "/m2") == 0 || line_.compare(at_, 4, "/m^2") == 0)) {
            at_ += line_[at_ + 2] == '2' ? 3 : 4;
            word = "g/m2";
        }
        named(std::move(word));
    }

    void named(std::string text) {
        const auto value = spelled(text);
        if (!value) {
            add(std::move(text));
            return;
        }
        // "twenty-four", "two dozen"
        if (words_.size() > begin_ && words_.back().in_words) {
            Word& before = words_.back();
            const bool sum = *before.number >= 20 && std::fmod(*before.number, 10) == 0 && *value < 10, product = text == "dozen" && *before.number < 10;
            if (sum || product) {
                before.number = sum ? *before.number + *value : *before.number * 12;
                before.text += " " + text;
                return;
            }
        }
        Word& word = add(std::move(text));
        word.number = value;
        word.in_words = true;
    }

    void mark(char c) {
        const bool touches = after_number();
        ++at_;
        if (c == ' ') return;
        if (c == '"' && touches) add("in");
        else if (c == '#' && touches) add("lb");
        else if (c == '\'' && touches && ahead(0) == '\'') { add("in"); ++at_; }
        else if (c == '-' && !touches && ahead(0) != ' ' && at_ >= 2 && line_[at_ - 2] != ' ') return;  // a compound: fold-up
        else if (c == '-' && touches && is_letter(ahead(0))) return;                                  // 12-page
        else if (c == '|') add(":");
        else if (static_cast<unsigned char>(c) < 0x80 && c != '#' && c != '\\') add(std::string(1, c));
    }

    const std::string& line_;
    int number_;
    std::vector<Word>& words_;
    std::size_t at_ = 0, begin_ = 0, number_end_ = std::string::npos;
};

/// How a line begins: the mark of an item is taken off.
bool take_item_mark(std::string& line) {
    const std::size_t start = line.find_first_not_of(" >");
    if (start == std::string::npos) return false;
    line.erase(0, start);
    const auto take = [&](std::size_t size) {
        line.erase(0, size);
        return true;
    };
    if (line.size() > 1 && std::string("-*+").find(line[0]) != std::string::npos && line[1] == ' ') return take(2);
    std::size_t digits = 0;
    while (digits < line.size() && is_digit(line[digits])) ++digits;
    if (digits > 0 && digits < 3 && digits + 1 < line.size() && (line[digits] == '.' || line[digits] == ')') && line[digits + 1] == ' ') return take(digits + 2);
    // A dot, a tick or a picture, as shops' editors and people's telephones have them: U+2022 and what lies beyond.
    const auto lead = static_cast<unsigned char>(line[0]);
    std::size_t size = 0;
    while (size < line.size() && static_cast<unsigned char>(line[size]) >= 0x80) ++size;
    const bool symbol = lead == 0xe2 || lead == 0xe3 || lead == 0xf0 || line.compare(0, 2, "\u00b7") == 0;
    if (symbol && size < line.size() && line[size] == ' ') return take(size + 1);
    return false;
}

bool is_heading(const std::string& raw) {
    const std::size_t start = raw.find_first_not_of(" \t"), last = raw.find_last_not_of(" \t");
    if (start == std::string::npos) return false;
    const std::string line = raw.substr(start, last - start + 1);
    if (line[0] == '#' && line.find_first_not_of('#') != std::string::npos && line[line.find_first_not_of('#')] == ' ') return true;
    if (line.size() > 80) return false;
    if (line.back() == ':' || (line.size() > 4 && line.starts_with("**") && (line.ends_with("**") || line.ends_with(":**")))) return true;
    const bool lower = std::any_of(line.begin(), line.end(), [](char c) { return c >= 'a' && c <= 'z'; });
    const auto capitals = std::count_if(line.begin(), line.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
    return !lower && capitals >= 4 && std::none_of(line.begin(), line.end(), is_digit);
}

/// Own limit: programs break lines at 60 characters or more; shorter ones were ended by hand.
constexpr std::size_t wrapped_from = 55;

/// Words after which a full stop ends no sentence.
bool is_shortened(const std::vector<Word>& words, std::size_t stop) {
    if (stop == 0) return false;
    const std::string& before = words[stop - 1].text;
    if (before == "in" || before == "lb" || before == "lbs")
        return stop + 1 < words.size() && words[stop + 1].line == words[stop].line && stop >= 2 && words[stop - 2].number.has_value();
    for (const char* word : {"approx", "ca", "e", "g", "i", "no", "incl", "excl", "vs", "pcs"})
        if (before == word) return true;
    return false;
}

class Sentences {
public:
    explicit Sentences(Pasted& into) : into_(into) {}
    void begin(bool item, bool heading, int line) {
        end();
        item_ = item;
        heading_ = heading;
        line_ = line;
    }
    /// Ends after full stops among the words that were added.
    void added() {
        for (; seen_ < into_.words.size(); ++seen_) {
            const std::string& text = into_.words[seen_].text;
            const bool stop = text == "." || text == "!" || text == "?" || text == ";";
            if (!stop || is_shortened(into_.words, seen_)) continue;
            close(seen_ + 1);
            // What follows within an item belongs to the item.
        }
    }
    void end() {
        close(into_.words.size());
        item_ = heading_ = false;
    }

private:
    void close(std::size_t last) {
        if (last > start_) {
            into_.sentences.push_back({start_, last, into_.words[start_].line, item_, heading_, heading_ ? 0 : under_});
            if (heading_) under_ = into_.sentences.size();
        }
        start_ = last;
    }
    Pasted& into_;
    std::size_t start_ = 0, seen_ = 0, under_ = 0;
    bool item_ = false, heading_ = false;
    int line_ = 0;
};

}  // namespace

Pasted read_pasted(const std::string& text) {
    Pasted pasted;
    Sentences sentences(pasted);
    int number = 0;
    std::size_t before = 0;
    for (const std::string& raw : lines_of(text)) {
        ++number;
        // A line that was broken by a program is long, or goes on in small letters.
        const std::size_t start = raw.find_first_not_of(" \t");
        const bool begins = before < wrapped_from && start != std::string::npos && raw[start] >= 'A' && raw[start] <= 'Z';
        before = raw.size();
        const bool heading = is_heading(raw);
        std::string marked = raw;
        const bool item = !heading && take_item_mark(marked);
        const std::string line = plain_line(marked);
        const bool blank = line.find_first_not_of(' ') == std::string::npos;
        const bool row = !blank && line[line.find_first_not_of(' ')] == '|';
        if (blank || item || heading || row || begins) sentences.begin(item || row, heading, number);
        LineReader(line, number, pasted.words).read();
        sentences.added();
        if (heading || row) sentences.end();
    }
    sentences.end();
    return pasted;
}

std::string plain_words(const std::string& text) {
    std::string plain;
    for (const std::string& line : lines_of(text)) {
        for (const char c : plain_line(line) + " ")
            if (c != ' ' || (!plain.empty() && plain.back() != ' ')) plain += c;
    }
    return plain;
}

}  // namespace qw::texts
