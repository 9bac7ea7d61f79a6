// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/annotations.h"

namespace qw::proof {

namespace {

constexpr std::uint32_t hidden = 2;  // table 165, bit position 2

Object normal_appearance(Object annotation) {
    Object normal = entry(entry(annotation, "/AP"), "/N");
    if (normal.isStream()) return normal;
    auto state = entry(annotation, "/AS");
    return state.isName() ? entry(normal, state.getName()) : Object::newNull();
}

/// Maps the appearance's box, turned by its own matrix, onto the annotation's rectangle.
Matrix fitted(const Box& appearance, const Box& rectangle) {
    const double x = (rectangle.right - rectangle.left) / (appearance.right - appearance.left);
    const double y = (rectangle.top - rectangle.bottom) / (appearance.top - appearance.bottom);
    return {x, 0, 0, y, rectangle.left - appearance.left * x, rectangle.bottom - appearance.bottom * y};
}

}  // namespace

std::vector<Appearance> shown_appearances(Object page) {
    std::vector<Appearance> shown;
    for (const auto& annotation : elements(entry(page, "/Annots"))) {
        if (count_of(entry(annotation, "/F")) & hidden) continue;
        Object form = normal_appearance(annotation);
        const auto rectangle = box_of(entry(annotation, "/Rect"));
        const auto box = box_of(entry(form, "/BBox"));
        if (!form.isStream() || !rectangle || !box) continue;
        const Box turned = around(matrix_of(entry(form, "/Matrix")).value_or(Matrix{}), *box);
        if (!turned.empty()) shown.push_back({form, fitted(turned, *rectangle)});
    }
    return shown;
}

}  // namespace qw::proof
