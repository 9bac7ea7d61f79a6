// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/set_reader.h"

#include "kit/map_reader.h"
#include "kit/part_set_reader.h"
#include "kit/rights.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// Design: what buyers may choose when they print, from half-way below 50 % to what drivers add for borderless.
constexpr double least_print_at = 0.30, most_print_at = 1.03;

/// Beyond this a length is a slip of the unit: 3 cm for 3 mm passes the reader of lengths, but not this.
const LengthRange edge_range{Length(), Length::mm(25), "0 mm to 25 mm"};

/// More is no journal any more; a pocket that holds a booklet is some millimetres thick.
constexpr int most_glued_in = 200;
const LengthRange filled_range{Length::mm(0.02), Length::mm(50), "0.02 mm to 50 mm"};

std::vector<std::string> paper_stocks(const Pipeline& pipeline) {
    std::vector<std::string> names;
    for (const Stock& stock : pipeline.stocks)
        if (stock.kind == Stock::Kind::paper) names.push_back(stock.name);
    return names;
}

/// `blank`, or one file of artwork. A word that can be no file's name is told as a word.
std::optional<LastBack> last_back_value(const Node& node, ArtworkFinder& finder, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "'blank', or a file of artwork");
    if (!text) return std::nullopt;
    if (*text == "blank") return LastBack{std::nullopt, node.mark};
    if (text->find_first_of("./") == std::string::npos) {
        tell_unknown_name("unknown-word", node.mark, *text, {"'blank' and no file of artwork", "", {"blank"}}, faults);
        return std::nullopt;
    }
    const std::vector<ArtworkFile> files = finder.find(node, faults);
    if (files.size() > 1)
        faults.add("bad-path", node.mark, in_quotes(*text) + " names " + std::to_string(files.size()) + " files", "one file of artwork");
    return files.size() == 1 ? std::optional(LastBack{files.front(), node.mark}) : std::nullopt;
}

/// "with-pages", the default, gives nothing.
std::optional<std::optional<double>> print_at_value(const Node& node, Faults& faults) {
    if (node.kind == Node::Kind::text && node.text == "with-pages") return std::optional<double>();
    const auto value =
        quantity_value({{{"%", 0.01}}, least_print_at, most_print_at, "100 %, or with-pages", "30 % to 103 %"})(node, faults);
    if (!value) return std::nullopt;
    return std::optional<double>(*value);
}

class SetReader {
public:
    SetReader(const Entry& entry, const SetContext& context, ArtworkFinder& finder, Faults& faults)
        : map_(entry.value, faults, "the set '" + entry.key + "'"), context_(context), finder_(finder), faults_(faults) {
        set_.name = entry.key;
        set_.mark = entry.mark;
    }

    Set read() {
        role_known_ = map_.required(
            "role", set_.role,
            word_value<Role>(
                {{"journal-page", Role::journal_page}, {"full-sheet", Role::full_sheet}, {"part", Role::part}, {"extra", Role::extra}}));
        read_sides();
        read_sizes();
        if (is_part()) set_.place = Place::cover;
        map_.optional("place", set_.place,
                      word_value<Place>({{"as-drawn", Place::as_drawn}, {"cover", Place::cover}, {"contain", Place::contain}}));
        map_.optional("print-at", set_.print_at, print_at_value);
        read_stock();
        map_.optional("rights", set_.rights, rights_value);
        read_glued_in();
        if (is_part() || !role_known_) read_part_keys(map_, role_known_, context_, finder_, set_, faults_);
        else forbid_part_keys(map_);
        if (!is_part()) read_files();
        check_last_back();
        map_.done();
        return std::move(set_);
    }

private:
    bool is_part() const { return role_known_ && set_.role == Role::part; }

    void read_sides() {
        if (is_part()) {
            map_.forbid("sides", "a part's sides follow from its faces", "remove it");
            return read_last_back();
        }
        if (set_.role == Role::journal_page) set_.sides = Sides::duplex;
        const bool sides_read =
            map_.optional("sides", set_.sides, word_value<Sides>({{"single", Sides::single}, {"duplex", Sides::duplex}})) ||
            !map_.has("sides");
        if (sides_read && role_known_ && set_.sides == Sides::single)
            map_.forbid("last-back", "single-sided sheets have no backs", "remove it, or write 'sides: duplex'");
        else read_last_back();
    }

    void read_last_back() {
        const Node* node = map_.optional("last-back");
        if (node) set_.last_back = last_back_value(*node, finder_, faults_);
    }

    void read_sizes() {
        if (is_part()) map_.forbid("drawn-at", "how large a part's faces are is told by its template", "remove it");
        else map_.optional("drawn-at", set_.drawn_at, size_value);
        map_.optional("bleed", set_.bleed, length_value(edge_range));
        map_.optional("safe-area", set_.safe_area, length_value(edge_range));
        if (!set_.drawn_at) return;
        const Length left = min(set_.drawn_at->width, set_.drawn_at->height) - 2 * (set_.bleed + set_.safe_area);
        if (left <= Length())
            faults_.add("out-of-range", map_.mark_of("drawn-at"), "bleed and safe area together leave nothing of the picture",
                        "a larger canvas, or less bleed and safe area");
    }

    void read_stock() {
        const bool written = map_.has("stock");
        map_.optional("stock", set_.stock, sourced(name_value({"a paper", "pipeline/stocks.yaml", paper_stocks(context_.pipeline)})));
        if (written || !role_known_) return;
        const auto usual = context_.pipeline.usual.find(name_of(set_.role));
        if (usual != context_.pipeline.usual.end()) set_.stock = usual->second;
    }

    /// What is glued into the journal fills its spine.
    void read_glued_in() {
        if (role_known_ && set_.role != Role::part && set_.role != Role::extra) {
            const std::string why = "only parts and extras are glued into the journal";
            for (const char* key : {"glued-in", "filled"}) map_.forbid(key, why, "remove it, or write 'role: extra'");
            return;
        }
        map_.optional("glued-in", set_.glued_in, whole_number_value(0, most_glued_in));
        if (map_.has("glued-in")) map_.optional("filled", set_.filled, length_value(filled_range));
        else map_.forbid("filled", "nothing of the set is glued in", "remove it, or say with 'glued-in' how many are");
    }

    void read_files() {
        const Node* files = role_known_ ? map_.required("files") : map_.optional("files");
        if (files) set_.files = finder_.find(*files, faults_);
    }

    /// A pattern that takes the last back in with the pages would have it printed twice, or never.
    void check_last_back() {
        if (is_part() || !set_.last_back || !set_.last_back->file) return;
        const Path& back = set_.last_back->file->path;
        const bool twice = std::any_of(set_.files.begin(), set_.files.end(), [&](const ArtworkFile& file) { return file.path == back; });
        if (twice)
            faults_.add("duplicate-file", set_.last_back->mark, in_quotes(set_.last_back->file->shown) + " is one of the set's 'files', too",
                        "each file once", "move it to a folder of its own");
    }

    MapReader map_;
    const SetContext& context_;
    ArtworkFinder& finder_;
    Faults& faults_;
    Set set_;
    bool role_known_ = false;
};

}  // namespace

Set read_set(const Entry& entry, const SetContext& context, ArtworkFinder& finder, Faults& faults) {
    return SetReader(entry, context, finder, faults).read();
}

const std::vector<std::string>& set_keys() {
    static const std::vector<std::string> keys{"role",     "files",    "sides",  "last-back", "drawn-at", "bleed",  "safe-area", "place",   "stock",
                                               "print-at", "glued-in", "filled", "part",      "faces",    "copies", "goes-in",   "holds", "goes-on", "rights"};
    return keys;
}

}  // namespace qw::kit
