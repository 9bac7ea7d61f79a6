// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

void read_boards(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("boards.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    Lookup known{"a board", "this file", {}};
    read_entries(map, "boards", "the board", faults, [&](const Entry& entry, MapReader& reader) {
        Board board;
        board.name = entry.key;
        reader.required("title", board.title, text_value);
        reader.required("size", board.size, size_value);
        reader.required("grain", board.grain, word_value<std::string>({{"height", "height"}, {"width", "width"}, {"unknown", "unknown"}}));
        need_origin(reader, entry, faults);
        known.known.push_back(entry.key);
        into.boards.push_back(board);
    });
    const Node* usual = map.required("usual");
    if (usual && is_map(*usual, faults, "{ metric: [a4-greyboard], us: [chipboard-12in] }")) {
        const auto names = list_value<std::string>(name_value(known), "[a4-greyboard]");
        MapReader rulers(*usual, faults, "'usual'");
        rulers.required("metric", into.usual_boards[UnitSystem::metric], names);
        rulers.required("us", into.usual_boards[UnitSystem::us], names);
        rulers.done();
    }
    map.done();
}

}  // namespace qw::kit
