// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_picture.h"

#include <algorithm>

namespace qw::kit {

namespace {

enum class Body { rigid, soft };

/// A piece by the name under which the drawing looks for it (compose/flat_cover.h).
struct PictureNeed {
    const char* piece;
    Body body;
    bool always;  ///< false: drawn if it is there
};

struct PictureKind {
    const char* name;
    std::vector<PictureNeed> needs;
};

const std::vector<PictureKind>& pictures() {
    static const std::vector<PictureKind> all{
        {"opened-cover", {{"board", Body::rigid, true}, {"spine", Body::rigid, false}, {"hinge-tape", Body::soft, false}}},
        {"wrapped-cover", {{"cover-paper", Body::soft, true}, {"board", Body::rigid, true}}},
        {"case-cover", {{"board", Body::rigid, true}, {"spine", Body::rigid, true}, {"spine-cloth", Body::soft, true}, {"cover-paper", Body::soft, false}}},
        {"soft-cover", {{"soft-cover", Body::soft, true}}},
        {"concertina", {{"board", Body::rigid, true}, {"guard", Body::soft, false}}},
        {"none", {}}};
    return all;
}

/// "of stock 'board' or 'spine'"
std::string stocks_of(Body body) { return body == Body::rigid ? "of stock 'board' or 'spine'" : "of stock 'page', 'cover' or 'bought'"; }

bool is_of(Body body, const PieceTemplate& piece) {
    const bool rigid = piece.stock == "board" || piece.stock == "spine";
    return piece.stock.empty() || rigid == (body == Body::rigid);  // an empty stock has been told
}

bool may_be_gone(const PieceTemplate& piece) {
    return piece.optional || std::any_of(piece.instead.begin(), piece.instead.end(), [](const Alternative& other) { return other.material.empty(); });
}

void check_need(const JournalTemplate& journal, const PictureNeed& need, const SourceMark& where, Faults& faults) {
    const std::string picture = "the picture " + in_quotes(journal.picture), piece = in_quotes(need.piece);
    const auto found = std::find_if(journal.pieces.begin(), journal.pieces.end(), [&](const PieceTemplate& one) { return one.name == need.piece; });
    if (found == journal.pieces.end()) {
        if (need.always)
            faults.add("picture-lacks", where, picture + " shows a piece " + piece + ", which the template does not have",
                       "a piece " + piece + " " + stocks_of(need.body), "name the piece so, take another picture, or write 'picture: none'");
    } else if (!is_of(need.body, *found)) {
        faults.add("picture-lacks", where,
                   picture + " shows the piece " + piece + " as something " + (need.body == Body::rigid ? "rigid" : "soft") +
                       ", and it is of stock " + in_quotes(found->stock),
                   "a piece " + piece + " " + stocks_of(need.body), "give the piece another name, take another picture, or write 'picture: none'");
    } else if (need.always && may_be_gone(*found)) {
        faults.add("picture-lacks", where, picture + " shows the piece " + piece + ", and a kit may do without it",
                   "a piece " + piece + " that is there whatever is chosen",
                   "take 'optional' or the alternative without a material off it, or take another picture");
    }
}

}  // namespace

const std::vector<std::string>& picture_names() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> all;
        for (const PictureKind& picture : pictures()) all.emplace_back(picture.name);
        return all;
    }();
    return names;
}

void check_picture(const JournalTemplate& journal, const SourceMark& where, Faults& faults) {
    for (const PictureKind& picture : pictures())
        if (journal.picture == picture.name)
            for (const PictureNeed& need : picture.needs) check_need(journal, need, where, faults);
    if (journal.picture == "none" && !journal.stations.spine.empty())
        faults.add("picture-lacks", where, "the holes in the spine are shown on the cover, and 'picture: none' shows none", "a picture of the cover",
                   "take a picture, or remove 'spine' from 'stations'");
}

}  // namespace qw::kit
