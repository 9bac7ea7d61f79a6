// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/claim_rules.h"

#include "base/words.h"
#include "materials/list.h"
#include "texts/claims.h"
#include "texts/mentions.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>

namespace qw::checks {

namespace {

using texts::Claim;

/// Papers that buyers know and that no kit of these data has, by their PWG 5101.1 names iso_a3, iso_a5, na_legal.
const std::vector<std::string> other_papers{"a3", "a5", "legal", "a4", "letter"};

/// Own limits. Grammage and pounds are told in whole numbers: half of one; pounds of another grade than the stock's are
/// converted and rounded twice: 4 %. "About" allows a twentieth of a weight and 3 % of a size.
constexpr double whole = 0.5, of_other_grade = 0.04, about_weight = 0.05, about_size = 0.03;
/// What is read off a ruler is read to half a millimetre, and the model's own lengths are rounded to as much.
constexpr double ruler_mm = 0.6;
/// A thing has a size for each paper, print and ruler; the nearest ones are told.
constexpr std::size_t most_sizes = 3;

std::string short_number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.10g", std::round(value * 100) / 100);
    return text;
}

std::vector<std::string> joined_titles(const std::set<std::string>& titles) { return {titles.begin(), titles.end()}; }

class TextAgainstKit {
public:
    TextAgainstKit(const Rules& rules, const KitTold& kit, const texts::Pasted& text, const std::string& file, Findings& findings)
        : rules_(rules), kit_(kit), text_(text), file_(file), findings_(findings) {}

    void check() {
        const std::vector<Claim> claims = texts::claims_in(text_, phrases());
        // What names its thing goes first: a bare number then tells the same fault no second time.
        for (const bool named : {true, false}) {
            const Claim* before = nullptr;
            for (const Claim& claim : claims) {
                Claim meant = claim;
                if (claim.same_as_before && before && before->kind != Claim::Kind::count) meant.thing = before->thing;
                if (meant.thing.empty() != named) judge(meant, claim.same_as_before && before && wrong_.count(before) ? before : nullptr, claim);
                before = &claim;
            }
        }
        papers();
        prints();
        lacking();
        to_buy();
    }

private:
    void say(const std::string& rule, const std::string& once, int line, std::string measured, std::string limit, std::string message, std::string mend) {
        if (!said_.insert(rule + '\n' + once).second) return;
        rules_.say(findings_, {rule, Level::error, file_, 0, line, std::move(measured), std::move(limit), std::move(message), std::move(mend)});
    }

    texts::Phrases phrases() const {
        texts::Phrases all;
        for (const ThingTold& thing : kit_.things) {
            const auto add = [&](std::vector<std::string>& to, bool yes) { if (yes) to.insert(to.end(), thing.phrases.begin(), thing.phrases.end()); };
            add(all.counted, !thing.counts.empty());
            add(all.measured, !thing.sizes.empty());
            add(all.weighed, !thing.stocks.empty());
        }
        return all;
    }
    /// All things that go by the phrase.
    std::vector<const ThingTold*> things(const std::string& phrase) const {
        std::vector<const ThingTold*> found;
        for (const ThingTold& thing : kit_.things)
            if (std::find(thing.phrases.begin(), thing.phrases.end(), phrase) != thing.phrases.end()) found.push_back(&thing);
        return found;
    }

    /// `twin`: the same thing said before in other units, which was wrong already.
    void judge(const Claim& claim, const Claim* twin, const Claim& key) {
        const std::size_t before = findings_.size();
        bool right = true;
        switch (claim.kind) {
            case Claim::Kind::count: right = count(claim); break;
            case Claim::Kind::grammage:
            case Claim::Kind::pounds: right = weight(claim, twin); break;
            case Claim::Kind::size: right = size(claim, twin); break;
            case Claim::Kind::version: right = version(claim); break;
        }
        if (!right || findings_.size() > before) wrong_.insert(&key);
    }

    bool count(const Claim& claim) {
        rules_.tried("text-counts");
        std::set<int> allowed;
        std::set<std::string> titles;
        int sum = 0;
        for (const ThingTold* thing : things(claim.thing)) {
            if (thing->counts.empty()) continue;
            allowed.insert(thing->counts.begin(), thing->counts.end());
            sum += thing->counts.front();
            titles.insert(thing->title);
        }
        allowed.insert(sum);
        if (allowed.count(static_cast<int>(claim.first))) return true;
        if (allowed.size() > 1) allowed.erase(0);
        std::vector<std::string> numbers;
        for (const int number : allowed) numbers.push_back(std::to_string(number));
        const std::string title = listed(joined_titles(titles), "and");
        say("text-counts", claim.thing + " " + short_number(claim.first), claim.line, claim.words, title + ": " + listed(numbers),
            "The text says " + claim.words + ", the kit has " + listed(numbers) + " (" + title + ")", "Write what the kit has, or leave the number out");
        return false;
    }

    static bool in_range(const Claim& claim, double least, double most, double give) {
        return most >= std::min(claim.first, claim.second) - give && least <= std::max(claim.first, claim.second) + give;
    }
    static bool in_range(const Claim& claim, double value, double give) { return in_range(claim, value, value, give); }
    static bool has_pounds(const Claim& claim, const StockTold& stock) {
        const double pounds = materials::basis_weight(stock.grammage, claim.grade);
        if (in_range(claim, pounds, std::max(whole, pounds * (claim.rough ? about_weight : of_other_grade)))) return true;
        // The weight that is sold in place of it, as the list of materials tells it.
        if (stock.weight.find(claim.grade) == std::string::npos) return false;
        for (std::size_t at = stock.weight.find(" lb"); at != std::string::npos; at = stock.weight.find(" lb", at + 1)) {
            const std::size_t blank = stock.weight.find_last_not_of("0123456789", at - 1);
            if (in_range(claim, std::strtod(stock.weight.c_str() + (blank == std::string::npos ? 0 : blank + 1), nullptr), 0)) return true;
        }
        return false;
    }

    bool weight(const Claim& claim, const Claim* twin) {
        rules_.tried("text-grammage");
        std::vector<StockTold> stocks;
        for (const ThingTold* thing : things(claim.thing)) stocks.insert(stocks.end(), thing->stocks.begin(), thing->stocks.end());
        if (stocks.empty()) stocks = kit_.stocks;
        const bool pounds = claim.kind == Claim::Kind::pounds;
        std::set<std::string> told;
        for (const StockTold& stock : stocks) {
            const double give = claim.rough ? std::max(whole, stock.grammage * about_weight) : whole;
            if (pounds ? has_pounds(claim, stock) : in_range(claim, stock.grammage, std::max(stock.grammage, stock.most), give)) return true;
            told.insert(stock.weight);
        }
        if (twin || stocks.empty()) return false;
        const std::string limit = listed(joined_titles(told));
        const std::string value = claim.grade + " " + short_number(claim.first) + " " + short_number(claim.second);  // g/m² or gsm is all one
        if (claim.thing.empty() && weights_.count(value)) return false;
        weights_.insert(value);
        say("text-grammage", value + " " + limit, claim.line, claim.words + (claim.thing.empty() ? "" : " (" + claim.thing + ")"), limit,
            "The text says " + claim.words + (claim.thing.empty() ? "" : " of " + claim.thing) + ", the kit says " + limit,
            "Write the kit's own weight, as it stands on the sheet of materials");
        return false;
    }

    bool size(const Claim& claim, const Claim* twin) {
        if (claim.thing.empty()) return true;  // of what, is not known
        rules_.tried("text-sizes");
        std::set<std::string> titles;
        std::map<double, std::string> nearest;
        for (const ThingTold* thing : things(claim.thing)) {
            for (const SizeTold& size : thing->sizes) {
                if (fits(claim, size)) return true;
                nearest.emplace(apart(claim, size), shown(size.least, claim));
                titles.insert(thing->title);
            }
        }
        if (twin) return false;
        std::vector<std::string> told;
        for (const auto& [distance, text] : nearest)
            if (told.size() < most_sizes && std::find(told.begin(), told.end(), text) == told.end()) told.push_back(text);
        const std::string limit = listed(told);
        say("text-sizes", claim.thing + " " + short_number(claim.first) + " " + short_number(claim.second), claim.line,
            claim.words + " (" + claim.thing + ")", limit,
            "The text says " + claim.words + " of " + listed(joined_titles(titles), "and") + ", the kit says " + limit,
            "Write the size that the sheet of measurements tells");
        return false;
    }
    /// How far what is said is from a size, whichever way it is turned; in mm.
    static double apart(const Claim& claim, const SizeTold& size) {
        const double width = size.least.width.in_mm(), height = size.least.height.in_mm();
        return std::min(std::abs(claim.first - width) + std::abs(claim.second - height), std::abs(claim.second - width) + std::abs(claim.first - height));
    }
    static bool fits(const Claim& claim, const SizeTold& size) {
        const auto one = [&](double said, Length least, Length most) {
            const double give = std::max({ruler_mm, claim.step / 2 + 0.1, claim.rough ? said * about_size : 0});
            return said >= least.in_mm() - give && said <= most.in_mm() + give;
        };
        return (one(claim.first, size.least.width, size.most.width) && one(claim.second, size.least.height, size.most.height)) ||
               (one(claim.second, size.least.width, size.most.width) && one(claim.first, size.least.height, size.most.height));
    }
    static std::string shown(Size size, const Claim& claim) {
        const bool inches = claim.words.find("in") != std::string::npos;
        const auto value = [&](Length length) { return short_number(inches ? length.in_inches() : length.in_mm()); };
        return value(size.width) + " x " + value(size.height) + (inches ? " in" : " mm");
    }

    /// "1.0" is the kit's 1.0.3 too; a version of another program is not looked at.
    bool version(const Claim& claim) {
        rules_.tried("text-version");
        if (kit_.version == claim.thing || kit_.version.starts_with(claim.thing + ".")) return true;
        say("text-version", claim.thing, claim.line, claim.thing, kit_.version,
            "The text says version " + claim.thing + ", the kit is " + kit_.version, "Write the kit's version, or leave it out");
        return false;
    }

    void papers() {
        rules_.tried("text-papers");
        for (const texts::Mention& paper : texts::papers_in(text_, other_papers)) {
            if (std::find(kit_.papers.begin(), kit_.papers.end(), paper.phrase) != kit_.papers.end()) continue;
            say("text-papers", paper.phrase, paper.line, paper.phrase, listed(kit_.papers, "and"),
                "The text offers the paper " + paper.phrase + ", which the kit has no files for", "Take it out, or add the paper to the kit");
        }
    }

    void prints() {
        rules_.tried("text-prints");
        for (const texts::PrintSaid& said : texts::prints_in(text_)) {
            const std::string name = name_of(said.print);
            if (std::find(kit_.prints.begin(), kit_.prints.end(), name) != kit_.prints.end()) continue;
            say("text-prints", name, said.line, name, listed(kit_.prints, "and"), "The text offers " + name + " files, which the kit does not have",
                "Take it out, or add the print to the kit");
        }
    }

    /// What a list of contents names and the kit does not have; where it tells a number, the counts have told it.
    void lacking() {
        rules_.tried("text-included");
        std::vector<std::string> absent;
        for (const ThingTold& thing : kit_.things)
            if (thing.counts == std::vector<int>{0}) absent.insert(absent.end(), thing.phrases.begin(), thing.phrases.end());
        for (const texts::Mention& mention : texts::mentions_in(text_, absent)) {
            if (texts::listed_by(text_, mention.sentence) != texts::Lists::contents) continue;
            if (told_at("text-counts", mention.line)) continue;
            say("text-included", mention.phrase, mention.line, mention.phrase, "none in the kit",
                "The text lists " + mention.phrase + " among what is included, and the kit has none", "Take it out, or add it to the kit");
        }
    }
    bool told_at(const std::string& rule, int line) const {
        return std::any_of(findings_.begin(), findings_.end(), [&](const Finding& f) { return f.rule == rule && f.line == line; });
    }

    /// A list of tools and materials against the kit's own.
    void to_buy() {
        std::vector<std::string> names;
        for (const ThingTold& thing : kit_.things) {
            if (!thing.to_buy) continue;
            names.insert(names.end(), thing.phrases.begin(), thing.phrases.end());
            names.insert(names.end(), thing.loose.begin(), thing.loose.end());
        }
        std::set<const ThingTold*> listed_things;
        int line = 0;
        for (const texts::Mention& mention : texts::mentions_in(text_, names)) {
            if (texts::listed_by(text_, mention.sentence) != texts::Lists::needs) continue;
            if (!line) line = mention.line;
            for (const ThingTold& thing : kit_.things)
                if (thing.to_buy && std::find(thing.loose.begin(), thing.loose.end(), mention.phrase) != thing.loose.end()) listed_things.insert(&thing);
            std::vector<const ThingTold*> meant = things(mention.phrase);
            meant.erase(std::remove_if(meant.begin(), meant.end(), [](const ThingTold* thing) { return !thing->to_buy; }), meant.end());
            listed_things.insert(meant.begin(), meant.end());
            rules_.tried("text-materials");
            if (meant.empty() || std::any_of(meant.begin(), meant.end(), [](const ThingTold* thing) { return thing->needed; })) continue;
            say("text-materials", mention.phrase, mention.line, mention.phrase, "not on the kit's list",
                "The text asks buyers for " + mention.phrase + ", which the kit does not need",
                "Take it out, or look whether the journal's choices are those that the text is written for");
        }
        // Fewer are no list: a sentence that names a tool in passing.
        if (listed_things.size() < 3) return;
        left_out(listed_things, line);
        cautions(listed_things, line);
    }
    void left_out(const std::set<const ThingTold*>& there, int line) {
        rules_.tried("text-list-short");
        std::vector<std::string> missing;
        for (const ThingTold& thing : kit_.things) {
            if (!thing.to_buy || !thing.must || there.count(&thing)) continue;
            if (texts::mentions_in(text_, thing.phrases).empty() && texts::mentions_in(text_, thing.loose).empty()) missing.push_back(thing.title);
        }
        if (missing.empty()) return;
        say("text-list-short", "", line, std::to_string(missing.size()) + " left out", "all that the kit cannot be made without",
            "The text's list of tools and materials leaves out " + listed(missing, "and"), "Add them, or point to the sheet of materials");
    }
    void cautions(const std::set<const ThingTold*>& there, int line) {
        rules_.tried("text-cautions");
        const bool called_for = std::any_of(there.begin(), there.end(), [](const ThingTold* thing) { return thing->cautioned; });
        static const std::vector<std::string> cautious{"care", "careful", "carefully", "caution", "safety", "safe", "sharp", "adult", "child",
                                                       "children", "choking", "maker's instruction", "manufacturer's instruction"};
        if (!called_for || !texts::mentions_in(text_, cautious).empty()) return;
        say("text-cautions", "", line, "no caution", "a word of care beside the tools",
            "The text lists tools that the kit's own list gives cautions for, and says nothing of them",
            "Add a sentence, or point to the cautions on the sheet of materials");
    }

    const Rules& rules_;
    const KitTold& kit_;
    const texts::Pasted& text_;
    const std::string& file_;
    Findings& findings_;
    std::set<std::string> said_, weights_;
    std::set<const Claim*> wrong_;
};

}  // namespace

void check_claims(const Rules& rules, const KitTold& kit, const texts::Pasted& text, const std::string& file, Findings& findings) {
    TextAgainstKit(rules, kit, text, file, findings).check();
}

}  // namespace qw::checks
