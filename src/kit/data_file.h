// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "kit/faults.h"
#include "kit/map_reader.h"
#include "kit/node.h"
#include "kit/pipeline.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// Opens the files of a pipeline, notes what was read, and collects what is wrong with any of them.
class DataFolder {
public:
    /// `folder` is the pipeline's, resolved.
    DataFolder(Disk& disk, Path folder, Faults& faults, std::vector<InputFile>& inputs)
        : disk_(disk), folder_(std::move(folder)), faults_(faults), inputs_(inputs) {}

    /// The raw bytes of "texts/guide.txt"; nothing, and told, when it cannot be had.
    std::optional<std::string> bytes(const std::string& name);
    /// The tree of "papers.yaml"; nothing, and told, when it is missing or not well formed. `read` becomes its bytes.
    std::optional<Node> tree(const std::string& name, std::string* read = nullptr);
    /// Names of the files in a folder that are not hidden, and end so; none when there is no such folder.
    std::vector<std::string> files_in(const std::string& folder, const std::string& ending);
    Faults& faults() { return faults_; }

private:
    Disk& disk_;
    Path folder_;
    Faults& faults_;
    std::vector<InputFile>& inputs_;
};

/// Asks for `format: 1`, the only format that the files of the pipeline have had.
void check_format(MapReader& map);

/// Hands each entry of the map `key` to `read`, with a reader of its own; `subject` is "the printer". Keys must be
/// plain names. `read` need not call `done`.
using ReadEntry = std::function<void(const Entry& entry, MapReader& map)>;
void read_entries(MapReader& root, const std::string& key, const std::string& subject, Faults& faults, const ReadEntry& read);

/// The same for a map that may be left out.
void read_optional_entries(MapReader& root, const std::string& key, const std::string& subject, Faults& faults, const ReadEntry& read);

/// Asks for `source` and `why`; one of them must say where a value comes from.
void need_origin(MapReader& map, const Entry& entry, Faults& faults);

}  // namespace qw::kit
