// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/page_tree.h"

#include <set>

namespace qw::proof {

namespace {

constexpr int deepest_tree = 256;
constexpr std::size_t most_pages = 50'000;

class TreeWalk {
public:
    explicit TreeWalk(Damage& damage) : damage_(damage) {}

    void node(Object node, TreePage inherited, int depth) {
        if (!node.isDictionary()) return damage_.note("the page tree holds something that is no page");
        inherit(node, inherited);
        if (!entry(node, "/Kids").isArray()) return leaf(node, inherited);
        if (depth > deepest_tree) throw Unreadable("the page tree is deeper than 256 levels");
        if (node.isIndirect() && !seen_.insert(node.getObjGen()).second)
            throw Unreadable("the page tree holds the same node twice");
        for (const auto& kid : elements(entry(node, "/Kids"))) this->node(kid, inherited, depth + 1);
    }

    std::vector<TreePage> pages;

private:
    static void inherit(Object node, TreePage& inherited) {
        const auto take = [&](const char* key, Object& value) {
            if (auto own = entry(node, key); !is_null(own)) value = own;
        };
        take("/Resources", inherited.resources);
        take("/MediaBox", inherited.media);
        take("/CropBox", inherited.crop);
        take("/Rotate", inherited.rotate);
    }

    void leaf(Object page, TreePage& inherited) {
        if (!is_name(entry(page, "/Type"), "Page")) damage_.note("the page tree holds something that is no page");
        if (pages.size() == most_pages) throw Unreadable("it has more than 50 000 pages");
        inherited.page = page;
        pages.push_back(inherited);
    }

    Damage& damage_;
    std::set<QPDFObjGen> seen_;
};

/// A box that is there but is none is damage, told with the page's default in its place.
std::optional<Box> usable(Object object, const char* name, Damage& damage) {
    if (is_null(object)) return std::nullopt;
    const auto box = box_of(object);
    if (box && !box->empty()) return box;
    damage.note(std::string(name) + " is no rectangle");
    return std::nullopt;
}

int rotation_of(Object object, Damage& damage) {
    if (is_null(object)) return 0;
    const auto turn = number_of(object);
    const int whole = turn ? static_cast<int>(*turn) : 0;
    if (!turn || *turn != whole || whole % 90 != 0) {
        damage.note("Rotate is no multiple of 90");
        return 0;
    }
    return (whole % 360 + 360) % 360;
}

double user_unit_of(Object object, Damage& damage) {
    if (is_null(object)) return 1;
    const auto unit = number_of(object);
    if (unit && *unit > 0) return *unit;
    damage.note("UserUnit is no positive number");
    return 1;
}

}  // namespace

std::vector<TreePage> pages_of(Object catalog, Damage& damage) {
    const Object root = entry(catalog, "/Pages");
    if (!entry(root, "/Kids").isArray()) throw Unreadable("it has no page tree");
    TreeWalk walk(damage);
    const Object none = Object::newNull();
    walk.node(root, {none, none, none, none, none}, 0);
    const auto said = number_of(entry(root, "/Count"));
    if (!said || *said != static_cast<double>(walk.pages.size()))
        damage.note("the page tree holds " + std::to_string(walk.pages.size()) + " pages and says another number");
    return std::move(walk.pages);
}

void tell_boxes(const TreePage& page, PageFacts& facts, Damage& damage) {
    if (is_null(page.media)) damage.note("there is no MediaBox");
    const Box media = usable(page.media, "MediaBox", damage).value_or(Box{});
    const auto effective = [&](Object object, const char* name, const Box& otherwise) {
        const Box box = usable(object, name, damage).value_or(otherwise).shared_with(media);
        if (!box.empty() || media.empty()) return box;
        damage.note(std::string(name) + " lies outside MediaBox");
        return otherwise;
    };
    const Object bleed = entry(page.page, "/BleedBox"), trim = entry(page.page, "/TrimBox");
    const Box crop = effective(page.crop, "CropBox", media);
    facts.media = media.rect();
    facts.crop = crop.rect();
    facts.bleed = effective(bleed, "BleedBox", crop).rect();
    facts.trim = effective(trim, "TrimBox", crop).rect();
    facts.has_bleed = !is_null(bleed);
    facts.has_trim = !is_null(trim);
    facts.rotate = rotation_of(page.rotate, damage);
    facts.user_unit = user_unit_of(entry(page.page, "/UserUnit"), damage);
}

}  // namespace qw::proof
