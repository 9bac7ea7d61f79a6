// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/trace.h"

#include "base/digest.h"
#include "base/fault.h"

namespace qw::engine {

namespace {

Fault not_there(const std::string& name) {
    return Fault(FaultKind::not_carried_out, {"missing-file", {name, 0, 0}, "it is needed and not there", "", ""});
}

}  // namespace

Read read_of(const std::string& name, const std::string& path, const std::string& source, const std::optional<Value>& value) {
    Read read{ReadKind::value, name, {}, path, {}, source, 0};
    if (!value) return read;
    read.digest = sha256_of(value->text);
    read.text = shortened(value->text);
    read.line = value->line;
    return read;
}

void Trace::record(Read read) {
    const std::lock_guard lock(mutex_);
    reads_.insert_or_assign(Key{read.kind, read.name, read.path}, std::move(read));
}

std::optional<Path> Trace::file_if_there(const std::string& name) {
    const auto digest = digests_.file(name);
    if (digest) record({ReadKind::file, name, digest->sha256, {}, {}, {}, 0});
    else record({ReadKind::missing, name, {}, {}, {}, {}, 0});
    if (!digest) return std::nullopt;
    return digests_.place(name);
}

Path Trace::file(const std::string& name) {
    if (auto path = file_if_there(name)) return *path;
    throw not_there(name);
}

std::optional<std::vector<std::string>> Trace::folder_if_there(const std::string& name) {
    const auto listing = digests_.folder(name);
    if (listing) record({ReadKind::folder, name, listing->sha256, {}, {}, {}, 0});
    else record({ReadKind::missing, name, {}, {}, {}, {}, 0});
    if (!listing) return std::nullopt;
    return listing->names;
}

std::vector<std::string> Trace::folder(const std::string& name) {
    if (auto names = folder_if_there(name)) return *std::move(names);
    throw not_there(name);
}

std::optional<std::string> Trace::value(const std::string& name, const std::string& path) {
    const auto source = digests_.file(name);
    auto value = source && values_ ? values_(name, path) : std::nullopt;
    record(read_of(name, path, source ? source->sha256 : "", value));
    if (!value) return std::nullopt;
    return std::move(value->text);
}

Path Trace::made(const std::string& name) {
    const auto found = made_.find(name);
    if (found == made_.end())
        throw Fault(FaultKind::not_carried_out, {"not-made", {name, 0, 0}, "none of the steps before this one made it", "", ""});
    record({ReadKind::made, name, found->second.sha256, {}, {}, {}, 0});
    return store_.path(found->second.sha256);
}

Path Trace::output(const std::string& name) {
    const std::lock_guard lock(mutex_);
    Path& path = outputs_[name];
    if (path.empty()) path = store_.scratch();
    return path;
}

std::vector<Read> Trace::reads() const {
    std::vector<Read> reads;
    for (const auto& [key, read] : reads_) {
        const bool looked_at = !reads.empty() && reads.back().kind == read.kind && reads.back().name == read.name;
        if (read.kind != ReadKind::made && !looked_at && !digests_.still(read.name))
            throw Fault(FaultKind::not_carried_out, {"changed-meanwhile", {read.name, 0, 0}, "it was changed while it was being used", "",
                                                     "run this again when nothing writes to it"});
        reads.push_back(read);
    }
    return reads;
}

std::vector<Output> Trace::put_outputs() {
    std::vector<Output> outputs;
    for (const auto& [name, path] : outputs_) {
        try {
            outputs.push_back({name, store_.put(path)});
        } catch (const Fault& fault) {
            const FaultNote& note = fault.notes().front();
            throw Fault(fault.kind(), {note.code, {name, 0, 0}, "it could not be taken into the store: " + to_text(note), "", ""});
        }
    }
    return outputs;
}

}  // namespace qw::engine
