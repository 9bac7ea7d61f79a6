// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/journal_names.h"
#include "kit/journal_reader.h"
#include "kit/map_reader.h"
#include "kit/values.h"

namespace qw::kit {

/// What stands on a journal's lists: pieces, cut lengths, items and figures, and what may stand in for them.
class JournalPartsReader {
public:
    JournalPartsReader(JournalTemplate& journal, JournalNames& names, const JournalContext& context, Faults& faults);

    /// Reads the four keys of the template.
    void read(MapReader& root);

    Reader<std::vector<std::string>> tools_value() const;

private:
    void read_piece(const Entry& entry, MapReader& map);
    void read_cut_length(const Entry& entry, MapReader& map);
    void read_item(const Entry& entry, MapReader& map);
    void check_is_bought(const Entry& entry);
    void read_figure(const Entry& entry, MapReader& map);
    void read_choosable(MapReader& map, Choosable& thing);
    void read_instead(const Node& node, Choosable& thing, bool has_thickness);
    Alternative read_alternative(const Entry& entry, MapReader& map) const;
    void check_thickness(const Alternative& other, const SourceMark& where, bool thing_has_one);
    /// What a piece is glued with stands further down in the file.
    void check_glue();

    JournalTemplate& journal_;
    JournalNames& names_;
    Faults& faults_;
    const std::vector<Material>& materials_;
    Lookup tool_names_, material_names_;
    std::vector<Sourced<std::string>> glues_;
};

}  // namespace qw::kit
