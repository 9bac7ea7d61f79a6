// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/facts.h"

#include "artwork/damage.h"
#include "artwork/ink_rows.h"
#include "artwork/read.h"
#include "artwork/reader.h"
#include "artwork/sample_digest.h"

namespace qw::artwork {

Facts look(Disk& disk, const Path& path, const Limits& limits) {
    const auto source = disk.open(path);
    Reader reader(*source);
    Facts facts;
    InkRows rows;
    SampleDigest samples(rows);
    try {
        read_picture(reader, limits, Purpose::measuring, facts, samples);
        facts.ink = rows.ink();
        facts.pixels = samples.text();
    } catch (const Damage& damage) {
        facts = Facts{};
        facts.damage = damage.why;
    }
    reader.drain();
    facts.bytes = reader.bytes();
    facts.sha256 = reader.sha256();
    if (facts.damage.empty() && facts.kind == Kind::jpeg && facts.passage == Passage::through) {
        facts.payload = {{0, facts.bytes}};
        facts.payload_sha256 = facts.sha256;
    }
    return facts;
}

}  // namespace qw::artwork
