// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/differences.h"

#include <cstddef>
#include <utility>

namespace qw::engine {

namespace {

std::string digest_in(const std::optional<FileDigest>& file) { return file ? file->sha256 : ""; }

class Comparing {
public:
    Comparing(Comparison& into, Digests& digests, const Values& values, const EarlierMade& made)
        : into_(into), digests_(digests), values_(values), made_(made) {}

    void read(std::size_t index) {
        const Read& read = into_.before->reads[index];
        switch (read.kind) {
            case ReadKind::file: return hold(Cause::file, read, digest_in(digests_.file(read.name)));
            case ReadKind::folder: {
                const auto listing = digests_.folder(read.name);
                return hold(Cause::folder, read, listing ? listing->sha256 : "");
            }
            case ReadKind::missing: return missing(read);
            case ReadKind::made: return made(read);
            case ReadKind::value: return value(read, index);
        }
    }

private:
    void hold(Cause cause, const Read& read, std::string now) {
        if (now != read.digest) into_.differences.push_back({cause, read.name, {}, read.digest, std::move(now), 0});
    }

    void missing(const Read& read) {
        std::string now = digest_in(digests_.file(read.name));
        if (now.empty())
            if (const auto listing = digests_.folder(read.name)) now = listing->sha256;
        hold(Cause::appeared, read, std::move(now));
    }

    void made(const Read& read) {
        const Earlier earlier = made_(read.name);
        if (earlier.certain) hold(Cause::made, read, digest_in(earlier.digest));
        else into_.may = true;
    }

    // The file around a value is asked first: while its bytes are the same nobody need take it apart.
    void value(const Read& read, std::size_t index) {
        if (source_name_ != read.name) {
            source_ = digest_in(digests_.file(read.name));
            source_name_ = read.name;
        }
        if (source_ == read.source) return;
        Read now = read_of(read.name, read.path, source_, !source_.empty() && values_ ? values_(read.name, read.path) : std::nullopt);
        if (now.digest != read.digest) {
            into_.differences.push_back({Cause::value, read.name, read.path, read.text, now.text, now.line});
            return;
        }
        if (!std::exchange(into_.reads_differ, true)) into_.reads = into_.before->reads;
        into_.reads[index] = std::move(now);
    }

    Comparison& into_;
    std::string source_name_, source_;  // values of one file follow each other
    Digests& digests_;
    const Values& values_;
    const EarlierMade& made_;
};

}  // namespace

Comparison compare(std::optional<LogEntry> before, const std::string& key, Digests& digests, const Store& store, const Values& values, const EarlierMade& made) {
    Comparison result{std::move(before), {}, false, false, {}};
    if (!result.before) {
        result.differences.push_back({Cause::never_made, {}, {}, {}, key, 0});
        return result;
    }
    if (result.before->key != key) result.differences.push_back({Cause::step, {}, {}, result.before->key, key, 0});
    Comparing comparing(result, digests, values, made);
    for (std::size_t i = 0; i < result.before->reads.size(); ++i) comparing.read(i);
    // Where no stamp is trusted, the store's own files are not taken on their size either.
    for (const Output& output : result.before->outputs) {
        const bool there = digests.trust() == Trust::nothing ? store.is_sound(output.digest) : store.has(output.digest);
        if (!there) result.differences.push_back({Cause::output, output.name, {}, output.digest.sha256, {}, 0});
    }
    return result;
}

}  // namespace qw::engine
