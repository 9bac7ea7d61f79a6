// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/steps.h"

#include "base/digest.h"
#include "engine/graph.h"

#include <algorithm>
#include <condition_variable>
#include <mutex>

namespace qw::engine {

namespace {

/// All that may be used in a run; what steps do is independent of the others, but for the graph.
struct Means {
    Log& log;
    Store& store;
    Digests& digests;
    const Values& values;
};

MadeFiles files_of(const Made& outputs, const Store& store) {
    MadeFiles files;
    for (const auto& [name, digest] : outputs) files.emplace(name, store.path(digest.sha256));
    return files;
}

Made made_before(const Node& node) {
    Made made;
    for (const Node* before : node.before) made.insert(before->outputs.begin(), before->outputs.end());
    return made;
}

Made outputs_of(const LogEntry& entry) {
    Made made;
    for (const Output& output : entry.outputs) made.emplace(output.name, output.digest);
    return made;
}

void keep(Node& node, const Means& means, Comparison&& now) {
    node.ran.fate = Fate::current;
    node.outputs = outputs_of(*now.before);
    for (const auto& [name, digest] : node.outputs) {
        means.store.use(digest.sha256);
        node.ran.outputs.push_back({name, digest, true});
    }
    if (!now.reads_differ) return;
    now.before->reads = std::move(now.reads);
    now.before->stats = means.digests.learnt();
    means.log.append(*now.before);
}

void make(Node& node, const Means& means, const Made& made, Comparison&& now) {
    node.ran.why = std::move(now.differences);
    Trace trace(means.digests, means.store, means.values, made);
    node.step.work(trace);
    LogEntry entry{node.step.name, node.step.key, trace.reads(), trace.put_outputs(), means.digests.learnt()};
    means.log.append(entry);
    node.outputs = outputs_of(entry);
    const Made before = now.before ? outputs_of(*now.before) : Made{};
    for (const auto& [name, digest] : node.outputs) {
        const auto old = before.find(name);
        node.ran.outputs.push_back({name, digest, old != before.end() && old->second.sha256 == digest.sha256});
    }
    node.ran.fate = Fate::made;
}

/// Brings one step up to date and returns the steps that it told.
std::vector<Step> bring_up_to_date(Node& node, const Means& means) {
    node.ran.step = node.step.name;
    if (node.blocked) return {};
    try {
        const Made made = made_before(node);
        const auto earlier = [&](const std::string& name) {
            const auto found = made.find(name);
            return found == made.end() ? Earlier{} : Earlier{found->second, true};
        };
        Comparison now = compare(means.log.find(node.step.name), node.step.key, means.digests, means.store, means.values, earlier);
        if (now.differences.empty()) keep(node, means, std::move(now));
        else make(node, means, made, std::move(now));
        return node.step.then ? node.step.then(files_of(node.outputs, means.store)) : std::vector<Step>{};
    } catch (const Fault& fault) {
        node.ran.fate = Fate::failed;
        node.ran.fault = fault;
        return {};
    }
}

/// Jobs that take steps from one graph until all are done.
class Workers {
public:
    Workers(Graph& graph, const Means& means) : graph_(graph), means_(means) {}

    void work() {
        std::unique_lock lock(mutex_);
        try {
            while (Node* node = wait_for_next(lock)) do_one(*node, lock);
        } catch (...) {
            if (!lock.owns_lock()) lock.lock();
            stopped_ = true;
            changed_.notify_all();
            throw;
        }
    }

private:
    /// Null when nothing is left to do, now or later.
    Node* wait_for_next(std::unique_lock<std::mutex>& lock) {
        for (;;) {
            if (stopped_) return nullptr;
            if (Node* node = graph_.next()) return node;
            if (at_work_ == 0) return nullptr;
            changed_.wait(lock);
        }
    }

    void do_one(Node& node, std::unique_lock<std::mutex>& lock) {
        ++at_work_;
        lock.unlock();
        std::vector<Step> told = bring_up_to_date(node, means_);
        lock.lock();
        --at_work_;
        const bool succeeded = node.ran.fate == Fate::current || node.ran.fate == Fate::made;
        graph_.claim(node);
        graph_.done(node, succeeded);
        graph_.add(std::move(told), &node);
        changed_.notify_all();
    }

    Graph& graph_;
    const Means& means_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::size_t at_work_ = 0;
    bool stopped_ = false;
};

Earlier foreseen_before(const Node& node, const std::string& name) {
    Earlier earlier;
    for (const Node* before : node.before) {
        const bool certain = before->forecast.foreseen == Foreseen::current;
        const auto found = before->outputs.find(name);
        if (found != before->outputs.end()) return {found->second, certain};
        earlier.certain = earlier.certain && certain;  // it may yet make something of this name
    }
    return earlier;
}

/// What a planning step made last time is all that is known of what comes after it.
std::vector<Step> told_early(const Node& node, const Store& store) {
    const auto lies_there = [&](const auto& output) { return store.has(output.second); };
    if (!node.step.then || node.outputs.empty() || !std::all_of(node.outputs.begin(), node.outputs.end(), lies_there)) return {};
    return node.step.then(files_of(node.outputs, store));
}

std::vector<Step> foresee_one(Node& node, const Means& means) {
    Forecast& forecast = node.forecast;
    forecast.step = node.step.name;
    try {
        const auto earlier = [&](const std::string& name) { return foreseen_before(node, name); };
        const Comparison now = compare(means.log.find(node.step.name), node.step.key, means.digests, means.store, means.values, earlier);
        forecast.why = now.differences;
        if (!now.differences.empty()) forecast.foreseen = Foreseen::will;
        else if (now.may || node.told_early) forecast.foreseen = Foreseen::may;
        forecast.open = node.step.then && forecast.foreseen != Foreseen::current;
        if (now.before) node.outputs = outputs_of(*now.before);
        return told_early(node, means.store);
    } catch (const Fault& fault) {
        forecast.foreseen = Foreseen::unclear;
        forecast.fault = fault;
        return {};
    }
}

}  // namespace

std::string static_key(std::initializer_list<std::string_view> parts) {
    Sha256 digest;
    for (const std::string_view part : parts) {
        digest.add(std::to_string(part.size()) + ":");
        digest.add(part);
    }
    return digest.hex();
}

std::vector<Ran> Steps::run(std::vector<Step> steps, const Jobs& jobs) {
    digests_.believe(log_.stats());
    Graph graph;
    graph.add(std::move(steps), nullptr);
    const Means means{log_, store_, digests_, values_};
    Workers workers(graph, means);
    jobs.for_each(jobs.count(), [&](std::size_t) { workers.work(); });
    graph.check_all_done();
    log_.append({{}, {}, {}, {}, digests_.learnt()});  // of what was looked at and found unchanged
    log_.close();
    store_.save();
    std::vector<Ran> all;
    for (Node* node : graph.in_order()) all.push_back(std::move(node->ran));
    return all;
}

Ran Steps::run(Step step) { return run(std::vector<Step>{std::move(step)}, Jobs(1)).front(); }

std::vector<Forecast> Steps::foresee(std::vector<Step> steps) {
    digests_.believe(log_.stats());
    Graph graph;
    graph.add(std::move(steps), nullptr);
    const Means means{log_, store_, digests_, values_};
    while (Node* node = graph.next()) {
        std::vector<Step> told = foresee_one(*node, means);
        graph.done(*node, node->forecast.foreseen != Foreseen::unclear);
        graph.add(std::move(told), node);
        for (Node* next : node->told) next->told_early = node->forecast.foreseen != Foreseen::current;
    }
    graph.check_all_done();
    std::vector<Forecast> all;
    for (Node* node : graph.in_order()) all.push_back(std::move(node->forecast));
    return all;
}

}  // namespace qw::engine
