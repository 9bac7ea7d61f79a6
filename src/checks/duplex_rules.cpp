// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/duplex_rules.h"

#include "checks/page_geometry.h"

namespace qw::checks {

namespace {

const std::string short_edge = "DuplexFlipShortEdge", long_edge = "DuplexFlipLongEdge";

bool same(Size a, Size b) { return near(a.width, b.width) && near(a.height, b.height); }
bool held_alike(Size a, Size b) { return a.landscape() == b.landscape(); }

std::string text_of(Size size) {
    return show(size.width, size.height, UnitSystem::metric) + (size.landscape() ? ", landscape" : ", portrait");
}

/// The entry with which this front's back is upright.
const std::string& entry_for(Size front) { return front.landscape() ? short_edge : long_edge; }

void check_entry(const Rules& rules, const proof::FileFacts& seen, const std::string& path, Findings& findings) {
    rules.tried("duplex-entry");
    if (turn_asked(seen)) return;
    rules.say(findings, {"duplex-entry", Level::warning, path, 0, 0, seen.duplex.empty() ? "no Duplex entry" : "Duplex " + seen.duplex,
                         "Duplex " + entry_for(shown_size(seen.pages.front())),
                         "The file is for both sides of the paper and does not say over which edge the sheet turns; the buyer's printer driver decides",
                         "Run the release again; buyers of this file must be told which edge to set"});
}

void check_back(const Rules& rules, std::optional<Turn> turn, Size front, Size back, const std::string& path, int page, Findings& findings) {
    rules.tried("backs-same-size");
    if (!same(front, back)) {
        rules.say(findings, {"backs-same-size", Level::error, path, page, 0, text_of(back), text_of(front), "The back has not the size of its front",
                             "Both pages of a sheet must be one size, held alike"});
    }
    // A back that lies across its front is neither upright nor upside down.
    if (!turn || !held_alike(front, back)) return;
    rules.tried("backs-upright");
    if (back_upright(front, *turn).value_or(true)) return;
    rules.say(findings, {"backs-upright", Level::error, path, page, 0, "Duplex " + (*turn == Turn::short_edge ? short_edge : long_edge),
                         "Duplex " + entry_for(front), "The back comes out upside down when the sheet is turned over as the file asks",
                         "Run the release again, and report it if it stays"});
}

}  // namespace

std::optional<Turn> turn_asked(const proof::FileFacts& seen) {
    if (seen.duplex == short_edge) return Turn::short_edge;
    if (seen.duplex == long_edge) return Turn::long_edge;
    return std::nullopt;
}

std::optional<bool> back_upright(Size front, Turn turn) {
    if (near(front.width, front.height)) return std::nullopt;
    return front.landscape() == (turn == Turn::short_edge);
}

void check_backs(const Rules& rules, bool both_sides, const proof::FileFacts& seen, const std::string& path, Findings& findings) {
    if (!seen.damage.empty() || seen.pages.empty()) return;  // told by `file-damaged` and `page-count`
    const std::optional<Turn> turn = turn_asked(seen);
    if (both_sides) check_entry(rules, seen, path, findings);
    else if (!turn) return;
    for (std::size_t back = 1; back < seen.pages.size(); back += 2)
        check_back(rules, turn, shown_size(seen.pages[back - 1]), shown_size(seen.pages[back]), path, static_cast<int>(back) + 1, findings);
}

}  // namespace qw::checks
