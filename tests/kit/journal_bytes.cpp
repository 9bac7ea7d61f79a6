// SPDX-License-Identifier: GPL-3.0-or-later
// A journal template of any bytes is read or refused with a line.
#include "base/fault.h"
#include "kit/journal_reader.h"
#include "kit/small_pipeline.h"
#include "kit/yaml.h"
#include "support/sanitized.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("every beginning of a template, and every one with a byte changed, is read or refused with a line") {
    const SmallPipeline pipeline;
    const kit::Pipeline shared = pipeline.read();
    const std::string whole = pipeline.text(j_yaml), file = "pipeline/journals/j.yaml";
    std::size_t refused = 0;
    const auto check = [&](const std::string& text) {
        kit::Faults faults;
        try {
            kit::read_journal(kit::read_yaml(text, file, faults), file, {shared.tools, shared.materials}, faults);
            faults.throw_if_any();
        } catch (const Fault& fault) {
            ++refused;
            const auto well_placed = [&](const FaultNote& note) { return note.where.file == file && note.where.line >= 1 && note.where.column >= 1; };
            if (std::all_of(fault.notes().begin(), fault.notes().end(), well_placed)) return;
            INFO(text);
            FAIL_CHECK(fault.what());
        }
    };
    const std::size_t step = sanitized() ? 7 : 1;
    for (std::size_t i = 0; i < whole.size(); i += step) check(whole.substr(0, i));
    if (step == 1) CHECK(refused == whole.size() - 5);  // whole after the first step, with what stands before the second, and after the second
    for (std::size_t i = 0; i < whole.size(); i += step)
        for (const char c : {'\n', ':', '}', '\'', '0'}) {
            std::string changed = whole;
            changed[i] = c;
            check(changed);
        }
}
