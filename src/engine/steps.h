// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "engine/differences.h"
#include "engine/jobs.h"

#include <functional>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace qw::engine {

/// What a step made, by name, and where it lies in the store; to be read only.
using MadeFiles = std::map<std::string, Path>;

/// One piece of work. It may depend on nothing but its key and what it asks its Trace for.
struct Step {
    std::string name;  ///< the same from run to run, and no other step's
    std::string key;   ///< digest of all that it is, but for what it reads: kind, options, versions (`static_key`)
    std::vector<std::string> after;  ///< names of steps that must have succeeded; what they made may be read
    std::function<void(Trace&)> work;
    /// For a planning step: which steps come after it, told from nothing but what it made, so that they are known though it did
    /// not run. They come after it without saying so, and may come after each other.
    std::function<std::vector<Step>(const MadeFiles&)> then = {};
};

/// Digest of a list of parts, of which none can be taken for two.
std::string static_key(std::initializer_list<std::string_view> parts);

enum class Fate {
    current,     ///< nothing was different: what it made lies in the store
    made,        ///< it ran
    failed,      ///< it ran, or what comes after it was asked for, and `fault` tells why not
    not_reached  ///< a step that it comes after did not succeed
};
enum class Foreseen {
    current,
    will,   ///< it would run
    may,    ///< it would run if a step before it makes something else than last time
    unclear ///< `fault` tells why that cannot be said
};

struct MadeOutput {
    std::string name;
    FileDigest digest;
    bool same = false;  ///< as the step made it last time: who reads it sees no difference
};
struct Ran {
    std::string step;
    Fate fate = Fate::not_reached;
    std::vector<Difference> why;      ///< why it ran, in the order of what it read
    std::vector<MadeOutput> outputs;  ///< sorted by name
    std::optional<Fault> fault;
};
struct Forecast {
    std::string step;
    Foreseen foreseen = Foreseen::current;
    std::vector<Difference> why;
    bool open = false;  ///< a planning step that is not current: other steps than those told may come after it
    std::optional<Fault> fault;
};

/// Runs steps that are not as they were, each as soon as those it comes after are done, and remembers them. What a step makes is the
/// same for any number of jobs; the order of the log's entries is not.
class Steps {
public:
    /// All must live longer. Whoever calls holds the lock on log and store.
    Steps(Log& log, Store& store, Digests& digests, Values values) : log_(log), store_(store), digests_(digests), values_(std::move(values)) {}

    /// In the order in which steps were told, those that a planning step told behind it. A step's Fault is told in its place, and
    /// steps that do not come after it go on; any other exception ends the run and is thrown. Throws Fault for a list that is wrong
    /// in itself: "unknown-step", "circular-steps", "step-twice", "made-twice".
    std::vector<Ran> run(std::vector<Step> steps, const Jobs& jobs);
    Ran run(Step step);
    /// The same, without running or writing anything. What comes after a planning step that has yet to run is told from what it made
    /// last time, at least as `may`.
    std::vector<Forecast> foresee(std::vector<Step> steps);

private:
    Log& log_;
    Store& store_;
    Digests& digests_;
    Values values_;
};

}  // namespace qw::engine
