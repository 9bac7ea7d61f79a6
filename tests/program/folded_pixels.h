// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Folding a cut-out piece as hands do: along its broken lines, one side turned over onto the other. Folds are level or
// upright on the sheet; how thick the paper is does not count.

#include "program/cut_sheet.h"

namespace qw::test::cutting {

/// Panels from the head of the sheet down, in each row from the left: how a template's net lies when it is not turned.
using PanelNames = std::vector<std::vector<std::string>>;

/// Where a pixel of the sheet lies: mirrored or not, and moved.
struct PixelPose {
    int turn_x = 1, turn_y = 1;
    double by_x = 0, by_y = 0;
    double x(double from) const { return turn_x * from + by_x; }
    double y(double from) const { return turn_y * from + by_y; }
    double x_back(double to) const { return turn_x * (to - by_x); }
    double y_back(double to) const { return turn_y * (to - by_y); }
};

struct Millimetres {
    double width = 0, height = 0;
};

class FoldedPiece {
public:
    /// Broken lines part the piece into panels; fails the test when it has others than named.
    FoldedPiece(const Mask& piece, const std::vector<BrokenLine>& lines, const PanelNames& names);

    /// Turns panels over along the line between them and those that stay; fails the test when there is no such line, or
    /// when there are several that do not lie on each other.
    void fold(const std::vector<std::string>& moves);

    /// Of all panels as they lie now.
    Millimetres size() const;
    Millimetres panel_size(const std::string& name) const;
    /// Where a panel lies now, in pixels.
    Extent place_of(const std::string& name) const;
    bool on_panel(const std::string& name, int x, int y) const { return labels_.at(x, y) == label_of(name); }
    const Mask& labels() const { return labels_; }
    /// Between two walls as they lie now, opening to the head of the back one: how wide the ground is of what goes down
    /// half its depth, and how far the ground of half that width is below the mouth.
    Millimetres room(const std::string& front, const std::string& back) const;

private:
    struct Panel {
        std::string name;
        Extent box;
        PixelPose pose;
    };
    struct Hinge {
        int a, b;
        BrokenLine line;
    };
    int label_of(const std::string& name) const;
    void name_panels(const std::vector<BrokenLine>& lines, const Mask& parted, const PanelNames& names);
    void find_hinges(const std::vector<BrokenLine>& lines);
    /// Where a hinge lies now with the panel of this label.
    double place_of(const Hinge& hinge, int label) const;

    Mask labels_;               ///< 1 + index of a panel
    std::vector<Panel> panels_;
    std::vector<Hinge> hinges_;
};

}  // namespace qw::test::cutting
