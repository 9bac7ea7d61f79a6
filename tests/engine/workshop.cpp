// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/workshop.h"

#include <sstream>
#include <stdexcept>

namespace qw::test {

using namespace engine;

namespace {

std::string text_of_cause(const Difference& why) {
    switch (why.cause) {
        case Cause::never_made: return "never made";
        case Cause::step: return "step";
        case Cause::file: return "file " + why.name;
        case Cause::folder: return "folder " + why.name;
        case Cause::appeared: return "appeared " + why.name;
        case Cause::value: return "value " + why.name + " " + why.path;
        case Cause::made: return "made " + why.name;
        case Cause::output: return "output " + why.name;
    }
    return "?";
}

std::string text_of_reasons(const std::vector<Difference>& reasons) {
    std::string text;
    for (const Difference& why : reasons) text += (text.empty() ? " (" : ", ") + text_of_cause(why);
    return text.empty() ? "" : text + ")";
}

std::string text_of_fault(const std::optional<Fault>& fault) {
    if (!fault) return "";
    const FaultNote& note = fault->notes().front();
    return " " + note.code + (note.where.file.empty() ? "" : " " + note.where.file);
}

std::string text_of_step(const Ran& ran) {
    static constexpr const char* fates[] = {"current", "made", "failed", "not reached"};
    std::string text = ran.step + ": " + fates[static_cast<int>(ran.fate)] + text_of_reasons(ran.why);
    for (const MadeOutput& output : ran.outputs) text += " " + output.name + (output.same ? " same" : " new");
    return text + text_of_fault(ran.fault);
}

std::string text_of_step(const Forecast& one) {
    static constexpr const char* words[] = {"current", "will", "may", "unclear"};
    return one.step + ": " + words[static_cast<int>(one.foreseen)] + text_of_reasons(one.why) + (one.open ? " open" : "") + text_of_fault(one.fault);
}

template <typename Told>
std::string in_one_line(const std::vector<Told>& all) {
    std::string text;
    for (const Told& one : all) text += (text.empty() ? "" : "; ") + text_of_step(one);
    return text;
}

std::string key_of(const std::string& kind, const std::vector<std::string>& options) {
    std::string key = static_key({kind});
    for (const std::string& option : options) key = static_key({key, option});
    return key;
}

std::vector<std::string> words_in(const std::string& text) {
    std::istringstream words(text);
    std::vector<std::string> all;
    for (std::string word; words >> word;) all.push_back(word);
    return all;
}

}  // namespace

void Workshop::write(const std::string& name, const std::string& text) {
    real->make_folders((inputs / name).parent_path());
    write_file(*real, inputs / name, text);
}

void Workshop::lose(const std::string& output) { real->remove(Store(*real, stored).path(last_.at(output).sha256)); }
std::string Workshop::text_of(const std::string& output) { return text_at(Store(*real, stored).path(last_.at(output).sha256)); }

LogEntry Workshop::entry(const std::string& step) {
    const auto found = Log(*real, log_file).find(step);
    if (!found) throw std::runtime_error("nothing is remembered of " + step);
    return *found;
}

std::vector<Ran> Workshop::run(std::vector<Step> steps) {
    Log log(*disk, log_file);
    Store store(*disk, stored);
    Digests digests(*disk, trust, [this](const std::string& name) { return inputs / name; });
    std::vector<Ran> all = Steps(log, store, digests, values()).run(std::move(steps), Jobs(jobs));
    for (const Ran& ran : all)
        for (const MadeOutput& output : ran.outputs) last_[output.name] = output.digest;
    return all;
}

std::vector<Forecast> Workshop::foresee(std::vector<Step> steps) {
    Log log(*disk, log_file);
    Store store(*disk, stored);
    Digests digests(*disk, trust, [this](const std::string& name) { return inputs / name; });
    return Steps(log, store, digests, values()).foresee(std::move(steps));
}

std::string Workshop::told(std::vector<Step> steps) { return in_one_line(run(std::move(steps))); }
std::string Workshop::foretold(std::vector<Step> steps) { return in_one_line(foresee(std::move(steps))); }

Values Workshop::values() {
    return [this](const std::string& name, const std::string& path) -> std::optional<Value> {
        ++values_asked;
        std::istringstream lines(text_at(inputs / name));
        int number = 1;
        for (std::string line; std::getline(lines, line); ++number)
            if (line.starts_with(path + "=")) return Value{line.substr(path.size() + 1), number};
        return std::nullopt;
    };
}

void Workshop::put(Trace& trace, const std::string& output, const std::string& text) {
    const auto sink = disk->create(trace.output(output));
    sink->write(text);
    sink->close();
}

Step Workshop::copying(const std::string& name, const std::string& input, const std::string& output, const std::string& key) {
    return {name, key_of("copy", {input, output, key}), {}, [=, this](Trace& trace) {
                ++runs;
                put(trace, output, text_at(trace.file(input)));
            }, {}};
}

Step Workshop::first_word(const std::string& name, const std::string& input, const std::string& output) {
    return {name, key_of("word", {input, output}), {}, [=, this](Trace& trace) {
                ++runs;
                put(trace, output, words_in(text_at(trace.file(input))).at(0));
            }, {}};
}

Step Workshop::joining(const std::string& name, std::vector<std::string> after, std::vector<std::string> made, std::vector<std::string> files, const std::string& output) {
    const std::string key = key_of(key_of("join", made), files);
    return {name, key, std::move(after), [=, this](Trace& trace) {
                ++runs;
                std::string text;
                for (const std::string& one : made) text += text_at(trace.made(one));
                for (const std::string& one : files) text += text_at(trace.file(one));
                put(trace, output, text);
            }, {}};
}

Step Workshop::quoting(const std::string& name, std::vector<std::pair<std::string, std::string>> wanted, const std::string& output) {
    return {name, key_of("quote", {output}), {}, [=, this](Trace& trace) {
                ++runs;
                std::string text;
                for (const auto& [file, path] : wanted) text += trace.value(file, path).value_or("nothing") + "\n";
                put(trace, output, text);
            }, {}};
}

Step Workshop::planning(const std::string& name, const std::string& input) {
    Step step = copying(name, input, name + ".txt", "plan");
    step.then = [=, this](const MadeFiles& files) {
        std::vector<Step> steps;
        std::vector<std::string> names, made;
        for (const std::string& word : words_in(text_at(files.at(name + ".txt")))) {
            steps.push_back(copying("make " + word, word, "made " + word, "k"));
            names.push_back("make " + word);
            made.push_back("made " + word);
        }
        steps.push_back(joining("all", names, made, {}, "all"));
        return steps;
    };
    return step;
}

}  // namespace qw::test
