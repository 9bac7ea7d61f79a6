// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/folded_pixels.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace qw::test::cutting {

namespace {

/// Splinters between a line and an edge that it runs along.
const double splinter_mm2 = 20;

std::vector<double> level_lines(const std::vector<BrokenLine>& lines) {
    std::vector<double> all;
    for (const BrokenLine& line : lines)
        if (!line.upright) all.push_back(line.at);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end(), [](double a, double b) { return b - a < pixels_of(0.5); }), all.end());
    return all;
}

int longest_run_of_columns(const std::vector<int>& deepest, int depth) {
    int longest = 0, run = 0;
    for (const int column : deepest) longest = std::max(longest, run = column >= depth ? run + 1 : 0);
    return longest;
}

}  // namespace

FoldedPiece::FoldedPiece(const Mask& piece, const std::vector<BrokenLine>& lines, const PanelNames& names) : labels_(piece.box) {
    Mask parted = piece;
    for (const BrokenLine& line : lines)
        for (int along = line.from; along < line.to; ++along) {
            const int x = line.upright ? static_cast<int>(line.at) : along, y = line.upright ? along : static_cast<int>(line.at);
            if (parted.inside(x, y)) parted.at(x, y) = 0;
        }
    name_panels(lines, parted, names);
    find_hinges(lines);
}

void FoldedPiece::name_panels(const std::vector<BrokenLine>& lines, const Mask& parted, const PanelNames& names) {
    const Blobs blobs = blobs_of(parted);
    const std::vector<double> levels = level_lines(lines);
    std::vector<std::vector<int>> rows(levels.size() + 1);
    for (std::size_t i = 0; i < blobs.blobs.size(); ++i) {
        const Blob& blob = blobs.blobs[i];
        const double pixels = static_cast<double>(blob.pixels);
        if (pixels < splinter_mm2 * std::pow(pixels_of(1), 2)) continue;
        rows[std::lower_bound(levels.begin(), levels.end(), blob.sum_y / pixels) - levels.begin()].push_back(static_cast<int>(i));
    }
    REQUIRE(rows.size() == names.size());
    std::vector<std::uint8_t> label(blobs.blobs.size(), 0);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        std::sort(rows[r].begin(), rows[r].end(), [&](int a, int b) { return blobs.blobs[a].box.left < blobs.blobs[b].box.left; });
        INFO("row " << r);
        REQUIRE(rows[r].size() == names[r].size());
        for (std::size_t i = 0; i < rows[r].size(); ++i) {
            panels_.push_back({names[r][i], blobs.blobs[rows[r][i]].box, {}});
            label[rows[r][i]] = static_cast<std::uint8_t>(panels_.size());
        }
    }
    for (const Run& run : blobs.runs)
        std::fill(&labels_.at(run.from, run.y), &labels_.at(run.from, run.y) + (run.to - run.from), label[run.blob]);
}

void FoldedPiece::find_hinges(const std::vector<BrokenLine>& lines) {
    const int beside = 4;
    for (const BrokenLine& line : lines) {
        std::map<std::pair<int, int>, int> met;
        for (int along = line.from; along < line.to; along += 4) {
            const int at = static_cast<int>(line.at);
            const int a = line.upright ? labels_.at(at - beside, along) : labels_.at(along, at - beside);
            const int b = line.upright ? labels_.at(at + beside, along) : labels_.at(along, at + beside);
            if (a && b && a != b) ++met[{a, b}];
        }
        for (const auto& [pair, times] : met)
            if (times * 4 > pixels_of(5)) hinges_.push_back({pair.first, pair.second, line});
    }
}

int FoldedPiece::label_of(const std::string& name) const {
    const auto found = std::find_if(panels_.begin(), panels_.end(), [&](const Panel& panel) { return panel.name == name; });
    INFO(name);
    REQUIRE(found != panels_.end());
    return static_cast<int>(found - panels_.begin()) + 1;
}

double FoldedPiece::place_of(const Hinge& hinge, int label) const {
    const PixelPose& pose = panels_[label - 1].pose;
    return hinge.line.upright ? pose.x(hinge.line.at) : pose.y(hinge.line.at);
}

void FoldedPiece::fold(const std::vector<std::string>& moves) {
    std::set<int> moving;
    for (const std::string& name : moves) moving.insert(label_of(name));
    std::vector<double> places;
    bool upright = false;
    for (const Hinge& hinge : hinges_) {
        if (moving.count(hinge.a) == moving.count(hinge.b)) continue;
        if (!places.empty()) REQUIRE(upright == hinge.line.upright);
        upright = hinge.line.upright;
        for (const int label : {hinge.a, hinge.b}) places.push_back(place_of(hinge, label));
    }
    INFO("fold of " << moves.front());
    REQUIRE_FALSE(places.empty());
    const auto [least, most] = std::minmax_element(places.begin(), places.end());
    REQUIRE(mm_of(*most - *least) < 0.1);
    const double at = (*least + *most) / 2;
    for (const int label : moving) {
        PixelPose& pose = panels_[label - 1].pose;
        if (upright) pose.turn_x = -pose.turn_x, pose.by_x = 2 * at - pose.by_x;
        else pose.turn_y = -pose.turn_y, pose.by_y = 2 * at - pose.by_y;
    }
}

Extent FoldedPiece::place_of(const std::string& name) const {
    const Panel& panel = panels_[label_of(name) - 1];
    const auto [left, right] = std::minmax({panel.pose.x(panel.box.left), panel.pose.x(panel.box.right)});
    const auto [top, bottom] = std::minmax({panel.pose.y(panel.box.top), panel.pose.y(panel.box.bottom)});
    const auto whole = [](double at) { return static_cast<int>(std::lround(at)); };
    return {whole(left), whole(top), whole(right), whole(bottom)};
}

Millimetres FoldedPiece::size() const {
    Extent all = place_of(panels_.front().name);
    for (const Panel& panel : panels_) {
        const Extent one = place_of(panel.name);
        all = {std::min(all.left, one.left), std::min(all.top, one.top), std::max(all.right, one.right), std::max(all.bottom, one.bottom)};
    }
    return {mm_of(all.width()), mm_of(all.height())};
}

Millimetres FoldedPiece::panel_size(const std::string& name) const {
    const Extent& box = panels_[label_of(name) - 1].box;
    return {mm_of(box.width()), mm_of(box.height())};
}

Millimetres FoldedPiece::room(const std::string& front, const std::string& back) const {
    const int wall = label_of(front), other = label_of(back);
    const Extent& box = panels_[wall - 1].box;
    const Extent& ground = panels_[other - 1].box;
    const PixelPose &from = panels_[wall - 1].pose, &to = panels_[other - 1].pose;
    std::vector<int> deepest(static_cast<std::size_t>(ground.width()), -1);
    int mouth = ground.bottom, bottom = ground.top;
    for (int y = box.top; y < box.bottom; ++y) {
        const int there_y = static_cast<int>(std::floor(to.y_back(from.y(y + 0.5))));
        for (int x = box.left; x < box.right; ++x) {
            if (labels_.at(x, y) != wall) continue;
            const int there_x = static_cast<int>(std::floor(to.x_back(from.x(x + 0.5))));
            if (labels_.at(there_x, there_y) != other) continue;
            int& column = deepest[there_x - ground.left];
            column = std::max(column, there_y);
            mouth = std::min(mouth, there_y);
            bottom = std::max(bottom, there_y);
        }
    }
    if (bottom < mouth) return {};
    const int width = longest_run_of_columns(deepest, (mouth + bottom) / 2);
    int depth = bottom;
    while (depth > mouth && longest_run_of_columns(deepest, depth) * 2 < width) --depth;
    return {mm_of(width), mm_of(depth + 1 - mouth)};
}

}  // namespace qw::test::cutting
