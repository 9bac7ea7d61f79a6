// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"

#include <string>
#include <vector>

namespace qw::parts {

/// Panels that make no net.
struct PanelsFault {
    std::string code;                  ///< "panels-overlap", "net-in-pieces"
    std::vector<std::size_t> panels;   ///< to blame; the first one tells the line
    std::string wrong, expected, mend;
};

/// Two panels that overlap, and panels that share no edge with the rest. Limits: `is_area` (parts/outline.h); an edge
/// shorter than `least_width` holds nothing together.
std::vector<PanelsFault> faults_of(const std::vector<Panel>& panels);

/// Panels as one sheet: what edges two of them share is gone, the rest is the cut line, with its arcs. Straight edges that
/// go on beyond a corner where nothing turns are one edge. Expects panels without faults.
struct Assembled {
    Region whole;
    std::vector<Outline> cut;          ///< outer ones counter-clockwise, inner ones clockwise; the largest first
};
Assembled assembled(const std::vector<Panel>& panels);

/// The rectangle around some panels, in the flat net: a face's frame.
Rect frame_of(const std::vector<Panel>& panels, const std::vector<std::size_t>& indices);

}  // namespace qw::parts
