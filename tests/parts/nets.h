// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"
#include "parts/outline.h"

#include <memory>
#include <string>
#include <vector>

namespace nets {

using qw::parts::Side;
using qw::parts::Step;

Step corner(double x, double y);
Step rounded(double x, double y, double radius);
Step arc(double through_x, double through_y, double x, double y);
std::vector<Step> box(double left, double bottom, double right, double top);

/// A net as one writes it down, in millimetres; changed by tests before it is built.
struct Draft {
    struct Panel { std::string name; std::vector<Step> steps; };
    struct Fold { std::vector<std::string> moves; bool valley = true; };
    struct Glue { std::string tab, on; };
    struct Face { std::string name; Side side; std::vector<std::string> panels; int head; int after; bool from_front; };  // after -1: all
    struct Pocket { std::string name, front, back; int opens; bool closes; int after; };
    std::string name;
    double scale = 1, caliper = 0.2;
    qw::UnitSystem system = qw::UnitSystem::metric;
    std::vector<Panel> panels;
    std::vector<Fold> folds;
    std::vector<Glue> glue;
    std::vector<Face> faces;
    std::vector<Pocket> pockets;
    std::vector<std::string> layers;

    Panel& panel(const std::string& which);
    Face& face(const std::string& which);
};

/// The net and the template whose marks its findings show: panel i at line 100 + i, fold 200 + i, glue 300 + i, face 400 + i,
/// pocket 500 + i, the part at line 1 of "pipeline/parts/NAME.yaml".
struct Built {
    std::shared_ptr<qw::kit::PartTemplate> part;
    qw::parts::Net net;
};
Built build(const Draft& draft);

Draft trifold_pocket();        ///< three panels of 84, 84 and 82.5 mm with a strip of 64 mm and two tabs
Draft envelope();              ///< slanted side flaps under a front, slanted top flap
Draft library_card_pocket();   ///< a thumb notch that is an arc, two tabs
Draft pocket_tag();            ///< a tag with a pocket behind it
Draft tuck_pocket();           ///< a flap that lies inside
Draft plain_tag();             ///< one panel
std::vector<Draft> all();

/// Panels side by side from left to right, without anything else; folds as given.
Draft row_of(const std::vector<double>& widths, double height, const std::vector<Draft::Fold>& folds);

/// Of a letter fold: the right panel over the middle one, the left one over both.
Draft letter_fold(double left, double middle, double right);

}  // namespace nets
