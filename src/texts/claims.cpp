// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/claims.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace qw::texts {

namespace {

using Words = std::initializer_list<const char*>;

bool is_one_of(const std::string& word, const Words& words) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

const Words rough_words{"about", "approx", "approximately", "around", "roughly", "circa", "ca", "nearly", "almost", "~"};
const Words bounding_words{"over", "than", "least", "most", "up", "to", "under", "between", "-", "/", "only"};
/// A number behind one of them is a name, not a count.
const Words naming_words{"page", "step", "figure",  "fig",     "no",  "nr",   "number",  "version", "v",   "part", "sheet",
                         "day",  "week", "chapter", "section", "age", "ages", "acrobat", "windows", "pdf", "$",    "set"};
const Words telling_words{"include",   "includes", "included",  "including", "contain", "contains", "containing", "get",
                          "gets",      "receive",  "receives",  "comes",     "come",    "has",      "have",       "download",
                          "downloads", "total",    "features",  "consists",  "there",   "inside",   "offers",     "holds",
                          "prints",    "print",    "printable", "with",      "kit",     "set",      "made"};
/// What instructions begin with.
const Words doing_words{"fold",  "cut",   "glue",   "sew",    "pierce", "score",  "trim", "take",  "put",    "place",
                        "stack", "slide", "tuck",   "insert", "mark",   "leave",  "wait", "press", "choose", "lay",
                        "make",  "use",   "thread", "punch",  "repeat", "attach", "open", "turn",  "then"};
const Words between_no_noun{"of",   "and",   "or", "for", "to", "with", "in", "on",   "per", "each", "from", "the",  "by",
                            "that", "which", "is", "are", "at", "x",    "at", "when", "you", "can",  "will", "into", "as"};
const Words units{"mm",   "cm",      "m",      "in",   "inch", "inches", "ft", "g",       "gr", "gsm", "g/m2",   "lb",
                  "lbs",  "pound",   "pounds", "pt",   "dpi",  "ppi",    "mb", "kb",      "gb", "px",  "pixels", "years",
                  "year", "minutes", "hours",  "days", "usd",  "eur",    "%",  "percent", "oz", "ml"};

struct UnitOfLength {
    const char* name;
    double mm;
};
constexpr UnitOfLength lengths[] = {{"mm", 1}, {"cm", 10}, {"in", 25.4}, {"inch", 25.4}, {"inches", 25.4}};

class ClaimReader {
public:
    ClaimReader(const Pasted& text, const Phrases& phrases) : text_(text), phrases_(phrases) {}

    std::vector<Claim> read() {
        for (const Sentence& sentence : text_.sentences) {
            sentence_ = sentence;
            for (at_ = sentence.first; at_ < sentence.last;) {
                const std::size_t before = at_;
                if (!version() && (!number(at_) || (!size() && !weight() && !count()))) ++at_;
                else if (at_ == before) ++at_;
            }
        }
        return std::move(claims_);
    }

private:
    const std::string& word(std::size_t at) const {
        static const std::string none;
        return at < sentence_.last && at >= sentence_.first ? text_.words[at].text : none;
    }
    const Word* number(std::size_t at) const { return at < sentence_.last && text_.words[at].number ? &text_.words[at] : nullptr; }
    const std::string& before(std::size_t at, std::size_t by) const {
        static const std::string none;
        return at >= sentence_.first + by ? text_.words[at - by].text : none;
    }
    bool rough(std::size_t at) const { return is_one_of(before(at, 1), rough_words) || (before(at, 1) == "." && is_one_of(before(at, 2), rough_words)); }

    std::string said(std::size_t from, std::size_t to) const {
        std::string words;
        for (std::size_t i = from; i < to; ++i) {
            const bool close = words.empty() || is_one_of(text_.words[i].text, {".", ",", ")", ":"}) || words.ends_with('(');
            words += (close ? "" : " ") + text_.words[i].text;
        }
        return words;
    }
    void add(Claim claim, std::size_t from, std::size_t to) {
        claim.line = text_.words[from].line;
        claim.words = said(from, to);
        // "120 g/m2 paper (32 lb bond)": what stands in brackets behind it says the same once more.
        std::size_t behind = last_end_;
        while (behind + 1 < from && is_one_of(text_.words[behind].text, {"paper", "card", "cardstock", "stock", "board"})) ++behind;
        claim.same_as_before = !claims_.empty() && last_end_ > sentence_.first && behind + 1 == from &&
                               is_one_of(text_.words[behind].text, {"(", "/", "=", "~", "or"});
        last_end_ = to;
        claims_.push_back(std::move(claim));
        at_ = to;
    }

    /// What a size or a weight belongs to: the nearest phrase of its clause; before it a bracket's sentence.
    std::string tied(std::size_t from, std::size_t to, const std::vector<std::string>& phrases) const {
        const auto parts = [&](std::size_t at) { return is_one_of(word(at), {",", ";", "and", "."}) || (text_.words[at].number && !text_.words[at].in_words); };
        const std::string* nearest = nullptr;
        std::size_t best = 9;
        std::size_t size = 0;
        for (std::size_t at = from; at > sentence_.first && from - at < 9;) {
            --at;
            if (parts(at) || word(at) == ")") break;
            const std::string* found = phrase_at(text_, at, from, phrases, &size);
            if (!found || from - (at + size) > best) continue;
            // A longer phrase that begins earlier and ends at the same place is the better one.
            if (nearest && from - (at + size) == best && found->size() < nearest->size()) continue;
            nearest = found;
            best = from - (at + size);
        }
        for (std::size_t at = to; at < sentence_.last && at - to < 9; ++at) {
            if (parts(at) || is_one_of(word(at), {"(", ")", "x"})) break;
            const std::string* found = phrase_at(text_, at, sentence_.last, phrases, &size);
            if (!found || at - to >= best) continue;
            // "pages, 120 g/m2" against "120 g/m2 paper for the pages": what is nearer wins.
            nearest = found;
            best = at - to;
            break;
        }
        return nearest ? *nearest : "";
    }

    const UnitOfLength* unit_at(std::size_t at) const {
        for (const UnitOfLength& unit : lengths)
            if (word(at) == unit.name) return &unit;
        return nullptr;
    }

    /// number [unit] x number [unit] [x number [unit]]; one without any unit is no size.
    bool size() {
        std::size_t at = at_ + 1;
        const UnitOfLength* first = unit_at(at);
        if (first) ++at;
        if (word(at) == "." && first) ++at;
        if (word(at) == "wide" || word(at) == "tall" || word(at) == "high") ++at;
        if (word(at) != "x" && word(at) != "by") return false;
        const Word* other = number(++at);
        if (!other) return false;
        const UnitOfLength* second = unit_at(++at);
        if (!second && !first) {
            at_ = at;  // two numbers that are no counts either
            return true;
        }
        if (second) ++at;
        if (word(at) == "x" && number(at + 1)) return skip_box(at);
        const UnitOfLength &one = first ? *first : *second, &two = second ? *second : *first;
        Claim claim;
        claim.kind = Claim::Kind::size;
        claim.first = *number(at_)->number * one.mm;
        claim.second = *other->number * two.mm;
        // A fraction is read off a ruler; a decimal is rounded to its last place, whole inches to no more than a quarter.
        const auto step_of = [](const Word& said, const UnitOfLength& unit) {
            return (said.fraction ? std::min(said.step, 1.0 / 16) : unit.mm > 20 ? std::min(said.step, 0.25) : said.step) * unit.mm;
        };
        const bool fractions = number(at_)->fraction || other->fraction;
        claim.step = fractions ? std::min(one.mm, two.mm) / 16 : std::max(step_of(*number(at_), one), step_of(*other, two));
        claim.rough = rough(at_);
        claim.thing = tied(at_, at, phrases_.measured);
        add(std::move(claim), at_, at);
        return true;
    }
    /// Three numbers are a box, which no kit is.
    bool skip_box(std::size_t at) {
        at += 2;
        at_ = unit_at(at) ? at + 1 : at;
        return true;
    }

    bool is_gsm(std::size_t at) const {
        if (word(at) == "gsm" || word(at) == "g/m2") return true;
        return (word(at) == "g" || word(at) == "gram" || word(at) == "gr") &&
               is_one_of(word(at + 1), {"paper", "card", "cardstock", "cardboard", "copy", "stock", "per"});
    }
    /// The words of a grade, and how many they are.
    std::pair<std::string, std::size_t> grade_at(std::size_t at) const {
        if (is_one_of(word(at), {"bond", "text", "cover", "index"})) return {word(at), 1};
        if (word(at) == "cardstock" || (word(at) == "card" && word(at + 1) == "stock")) return {"cover", word(at) == "card" ? 2 : 1};
        if (is_one_of(word(at), {"copy", "printer", "writing"}) && word(at + 1) == "paper") return {"bond", 2};
        return {"", 0};
    }

    /// [number to] number g/m², [number to] number lb grade.
    bool weight() {
        const Word* first = number(at_);
        std::size_t at = at_ + 1;
        const Word* second = first;
        if (is_gsm(at) || is_one_of(word(at), {"lb", "lbs"})) {
            // alone
        } else if (is_one_of(word(at), {"-", "to", "or"}) && number(at + 1)) {
            second = number(at + 1);
            at += 2;
        }
        Claim claim;
        claim.first = *first->number;
        claim.second = *second->number;
        if (is_gsm(at)) {
            claim.kind = Claim::Kind::grammage;
            ++at;
        } else if (is_one_of(word(at), {"lb", "lbs", "pound", "pounds"})) {
            const std::size_t behind = word(at + 1) == "." ? at + 2 : at + 1;
            const auto [grade, words] = grade_at(behind);
            if (grade.empty()) return false;
            claim.kind = Claim::Kind::pounds;
            claim.grade = grade;
            at = behind + words;
        } else {
            return false;
        }
        claim.rough = rough(at_);
        claim.thing = tied(at_, at, phrases_.weighed);
        add(std::move(claim), at_, at);
        return true;
    }

    bool instructs() const {
        std::size_t at = sentence_.first;
        while (at < sentence_.last && (text_.words[at].is_mark() || is_one_of(word(at), {"now", "first", "next", "finally"}))) ++at;
        return is_one_of(word(at), doing_words);
    }
    bool tells() const {
        if (instructs()) return false;
        if (sentence_.item || sentence_.heading) return true;
        for (std::size_t at = sentence_.first; at < sentence_.last; ++at)
            if (is_one_of(word(at), telling_words)) return true;
        return false;
    }

    /// "6 fold-up pockets": the thing is named within four words, and what follows makes no rate of it.
    bool count() {
        const Word& said = *number(at_);
        if (said.fraction || said.step != 1 || *said.number > 100000) return false;
        if (named_row(said)) return true;
        if (!tells() || is_one_of(before(at_, 1), bounding_words) || is_one_of(before(at_, 1), naming_words) || rough(at_)) return false;
        // "one" and "two" in running words tell of any page, not of how many there are.
        if (*said.number == 1 && !(sentence_.item && at_ == sentence_.first)) return false;
        std::size_t at = at_ + 1, size = 0;
        if (word(at) == "x") ++at;
        if (is_one_of(word(at), units)) return false;
        const std::string* thing = nullptr;
        for (const std::size_t last = at + 4; at < last && at < sentence_.last; ++at) {
            thing = phrase_at(text_, at, sentence_.last, phrases_.counted, &size);
            if (thing) break;
            if (text_.words[at].number || text_.words[at].is_mark() || is_one_of(word(at), between_no_noun)) return false;
        }
        if (!thing) return false;
        // Of "pocket tags" the last noun is counted.
        for (std::size_t more = 0; const std::string* next = phrase_at(text_, at + size, sentence_.last, phrases_.counted, &more); size = more) {
            at += size;
            thing = next;
        }
        const std::size_t end = at + size;
        if (is_one_of(word(end), {"per", "each", "every", "apiece"}) || (word(end) == "in" && is_one_of(word(end + 1), {"each", "every", "the"})) ||
            (is_one_of(word(end), {"for", "on", "to"}) && is_one_of(word(end + 1), {"each", "every", "a"})) || word(end) == "wide" || word(end) == "thick")
            return false;
        if (word(end) == "of" && !is_one_of(word(end + 1), {"paper", "the", "artwork", "print"})) return false;
        Claim claim;
        claim.first = *said.number;
        claim.thing = *thing;
        add(std::move(claim), at_, end);
        return true;
    }

    /// "Pockets: 6" as a line or a row by itself.
    bool named_row(const Word& said) {
        if (before(at_, 1) != ":" || is_one_of(word(at_ + 1), units) || word(at_ + 1) == "x") return false;
        std::size_t start = sentence_.first;
        while (start < at_ && (text_.words[start].is_mark() || is_one_of(word(start), {"number", "of"}))) ++start;
        std::size_t size = 0;
        const std::string* thing = phrase_at(text_, start, at_, phrases_.counted, &size);
        if (!thing || start + size != at_ - 1) return false;
        const bool ends = at_ + 1 >= sentence_.last || text_.words[at_ + 1].is_mark() || text_.words[at_ + 1].line != said.line;
        if (!ends) return false;
        Claim claim;
        claim.first = *said.number;
        claim.thing = *thing;
        const std::size_t end = at_ + 1;
        add(std::move(claim), start, end);
        return true;
    }

    /// "version 1.0.0", "v1.0.0": of the kit, where no program is named.
    bool version() {
        const std::string& first = word(at_);
        std::string told;
        std::size_t end = at_ + 1;
        if (first.size() > 2 && first[0] == 'v' && first[1] >= '0' && first[1] <= '9') {
            told = first.substr(1);
        } else if (first == "version" || first == "v") {
            if (word(end) == ":") ++end;
            told = word(end++);
        }
        if (told.empty() || told.find('.') == std::string::npos || told[0] < '0' || told[0] > '9') return false;
        if (is_one_of(before(at_, 1), {"pdf", "acrobat", "reader", "windows", "ios", "android", "license", "licence"})) return false;
        Claim claim;
        claim.kind = Claim::Kind::version;
        claim.thing = told;
        add(std::move(claim), at_, end);
        return true;
    }

    const Pasted& text_;
    const Phrases& phrases_;
    std::vector<Claim> claims_;
    Sentence sentence_;
    std::size_t at_ = 0, last_end_ = 0;
};

}  // namespace

std::vector<Claim> claims_in(const Pasted& text, const Phrases& phrases) { return ClaimReader(text, phrases).read(); }

}  // namespace qw::texts
