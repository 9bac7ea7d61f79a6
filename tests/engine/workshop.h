// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/steps.h"
#include "support/fault_disk.h"

#include <atomic>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace qw::test {

/// A folder of inputs, a log and a store, over several runs, each of which begins from what lies on the disk. Values stand in
/// lines "name=text".
class Workshop {
public:
    void write(const std::string& name, const std::string& text);
    void remove(const std::string& name) { real->remove(inputs / name); }
    /// Takes what lies in the store under this output's digest, as the last run told it.
    void lose(const std::string& output);
    std::string text_of(const std::string& output);
    engine::LogEntry entry(const std::string& step);

    std::vector<engine::Ran> run(std::vector<engine::Step> steps);
    std::vector<engine::Forecast> foresee(std::vector<engine::Step> steps);
    /// A run as one line: "draw: made (file a, value kit.yaml bleed) out new; pack: current zip same".
    std::string told(std::vector<engine::Step> steps);
    /// "plan: will (file a) open; draw: may"
    std::string foretold(std::vector<engine::Step> steps);

    // Steps. Their keys hold all that they are.
    engine::Step copying(const std::string& name, const std::string& input, const std::string& output, const std::string& key);
    engine::Step first_word(const std::string& name, const std::string& input, const std::string& output);
    engine::Step joining(const std::string& name, std::vector<std::string> after, std::vector<std::string> made, std::vector<std::string> inputs, const std::string& output);
    engine::Step quoting(const std::string& name, std::vector<std::pair<std::string, std::string>> values, const std::string& output);
    /// Reads a list of words; for each a step "make WORD" comes after it that copies the file WORD, then "all", which joins them.
    engine::Step planning(const std::string& name, const std::string& input);

    TestFolder folder;
    std::unique_ptr<Disk> real = real_disk();
    Disk* disk = real.get();
    Path inputs = folder / "inputs", stored = folder / "store", log_file = folder / "log";
    unsigned jobs = 1;
    engine::Trust trust = engine::Trust::stamps;
    std::atomic<int> runs = 0, values_asked = 0;

private:
    engine::Values values();
    std::string text_at(const Path& path) { return read_text(*real, path, 1 << 20); }
    void put(engine::Trace& trace, const std::string& output, const std::string& text);

    std::map<std::string, FileDigest> last_;
};

}  // namespace qw::test
