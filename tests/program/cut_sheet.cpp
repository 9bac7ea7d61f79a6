// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/cut_sheet.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::test::cutting {

PrintedSheet printed_sheet(const Path& pdf, int page, const Path& scratch) {
    std::filesystem::create_directories(scratch);
    const std::string n = std::to_string(page);
    // Lines are several pixels wide: without smoothing they are found to half a pixel, in two thirds of the time.
    const Said said = run("pdftoppm -r 600 -gray -aaVector no -singlefile -f " + n + " -l " + n + " " + quoted(pdf.string()) + " sheet", scratch);
    INFO(pdf << " page " << page << "\n" << said.text);
    REQUIRE(said.status == 0);
    std::ifstream file(scratch / "sheet.pgm", std::ios::binary);
    std::string kind;
    int most = 0;
    PrintedSheet sheet;
    file >> kind >> sheet.width >> sheet.height >> most;
    REQUIRE(kind == "P5");
    file.get();
    sheet.grey.resize(static_cast<std::size_t>(sheet.width) * sheet.height);
    file.read(sheet.grey.data(), static_cast<std::streamsize>(sheet.grey.size()));
    REQUIRE(file);
    return sheet;
}

namespace {

/// Joins runs of neighbouring rows that touch.
class RunJoiner {
public:
    template <typename IsSet> Blobs joined(const Extent& box, IsSet is_set) {
        std::size_t above = 0;
        for (int y = box.top; y < box.bottom; ++y) {
            const std::size_t row = runs_.size();
            for (int x = box.left; x < box.right; ++x) {
                if (!is_set(x, y)) continue;
                const int from = x;
                while (x < box.right && is_set(x, y)) ++x;
                runs_.push_back({y, from, x, static_cast<int>(runs_.size())});
                parents_.push_back(static_cast<int>(parents_.size()));
            }
            join_rows(above, row);
            above = row;
        }
        return gathered();
    }

private:
    void join_rows(std::size_t above, std::size_t row) {
        for (std::size_t a = above, b = row; a < row && b < runs_.size();) {
            if (runs_[a].from < runs_[b].to && runs_[b].from < runs_[a].to) parents_[root(static_cast<int>(a))] = root(static_cast<int>(b));
            (runs_[a].to < runs_[b].to ? a : b) += 1;
        }
    }
    int root(int run) {
        while (parents_[run] != run) run = parents_[run] = parents_[parents_[run]];
        return run;
    }
    Blobs gathered() {
        Blobs all;
        std::vector<int> number(runs_.size(), -1);
        for (std::size_t i = 0; i < runs_.size(); ++i) {
            int& blob = number[root(static_cast<int>(i))];
            Run& run = runs_[i];
            if (blob < 0) blob = static_cast<int>(all.blobs.size()), all.blobs.push_back({{run.from, run.y, run.to, run.y + 1}, 0, 0, 0});
            run.blob = blob;
            Blob& one = all.blobs[blob];
            one.box = {std::min(one.box.left, run.from), std::min(one.box.top, run.y), std::max(one.box.right, run.to), std::max(one.box.bottom, run.y + 1)};
            const double length = run.to - run.from;
            one.pixels += run.to - run.from;
            one.sum_x += length * (run.from + run.to) / 2;
            one.sum_y += length * (run.y + 0.5);
        }
        all.runs = std::move(runs_);
        return all;
    }

    std::vector<Run> runs_;
    std::vector<int> parents_;
};

Mask mask_of(const Blobs& blobs, int blob) {
    Mask mask(blobs.blobs[blob].box);
    for (const Run& run : blobs.runs)
        if (run.blob == blob) std::fill(&mask.at(run.from, run.y), &mask.at(run.from, run.y) + (run.to - run.from), std::uint8_t{1});
    return mask;
}

/// How far it is dark from the piece's left edge inward, in most of its rows.
int line_width(const PrintedSheet& sheet, const Mask& piece) {
    std::map<int, int> rows;
    for (int y = piece.box.top; y < piece.box.bottom; ++y) {
        int x = piece.box.left;
        while (x < piece.box.right && !piece.at(x, y)) ++x;
        int to = x;
        while (to < piece.box.right && sheet.dark(to, y)) ++to;
        ++rows[to - x];
    }
    return std::max_element(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.second < b.second; })->first;
}

/// Without a rim of so many pixels.
Mask pared(const Mask& mask, int rim) {
    Mask less(mask.box);
    for (int y = mask.box.top + rim; y < mask.box.bottom - rim; ++y)
        for (int x = mask.box.left + rim; x < mask.box.right - rim; ++x) {
            const std::uint8_t* here = &mask.set[static_cast<std::size_t>(y - mask.box.top) * mask.box.width() + (x - mask.box.left)];
            const std::ptrdiff_t rows = static_cast<std::ptrdiff_t>(rim) * mask.box.width();
            less.at(x, y) = static_cast<std::uint8_t>(here[0] & here[rim] & here[-rim] & here[rows] & here[-rows]);
        }
    return less;
}

}  // namespace

int Blobs::largest() const {
    REQUIRE_FALSE(blobs.empty());
    return static_cast<int>(std::max_element(blobs.begin(), blobs.end(), [](const Blob& a, const Blob& b) { return a.pixels < b.pixels; }) - blobs.begin());
}

Blobs blobs_of(const Mask& mask) {
    return RunJoiner().joined(
        mask.box, [&](int x, int y) { return mask.set[static_cast<std::size_t>(y - mask.box.top) * mask.box.width() + (x - mask.box.left)] != 0; });
}

Blobs light_blobs_of(const PrintedSheet& sheet) {
    return RunJoiner().joined({0, 0, sheet.width, sheet.height}, [&](int x, int y) { return !sheet.dark(x, y); });
}

CutPiece cut_out(const PrintedSheet& sheet) {
    const Blobs light = light_blobs_of(sheet);
    REQUIRE(light.runs.front().y == 0);
    REQUIRE(light.runs.front().from == 0);
    Mask not_paper({0, 0, sheet.width, sheet.height});
    std::fill(not_paper.set.begin(), not_paper.set.end(), std::uint8_t{1});
    for (const Run& run : light.runs)
        if (run.blob == light.runs.front().blob) std::fill(&not_paper.at(run.from, run.y), &not_paper.at(run.from, run.y) + (run.to - run.from), std::uint8_t{0});
    const Blobs things = blobs_of(not_paper);
    CutPiece cut;
    cut.with_line = mask_of(things, things.largest());
    cut.line = line_width(sheet, cut.with_line);
    const Blobs left = blobs_of(pared(cut.with_line, cut.line / 2));
    cut.piece = mask_of(left, left.largest());
    return cut;
}

}  // namespace qw::test::cutting
