// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::test {

Said quirewright(const std::string& arguments, const Path& folder) {
    std::filesystem::create_directories(folder);
    return run(quoted(program) + " " + arguments + " 2>quirewright.err", folder);
}

nlohmann::json quirewright_json(const std::string& arguments, const Path& folder) {
    const Said said = quirewright(arguments, folder);
    INFO(arguments << "\n" << said.text);
    const nlohmann::json json = nlohmann::json::parse(said.text, nullptr, false);
    REQUIRE_FALSE(json.is_discarded());
    return json;
}

std::string read(const Path& path) {
    std::ifstream file(path, std::ios::binary);
    INFO(path);
    REQUIRE(file.good());
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

void write(const Path& path, const std::string& text) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << text;
    REQUIRE(file.good());
}

Path copy_of_kit(const std::string& kit, const Path& folder) {
    const Path to = folder / kit;
    std::filesystem::create_directories(folder);
    std::filesystem::copy(source_folder / "kits" / kit, to, std::filesystem::copy_options::recursive);
    return to;
}

void replace_in(const Path& path, const std::string& from, const std::string& to) {
    std::string text = read(path);
    const std::size_t at = text.find(from);
    INFO(path << " has no '" << from << "'");
    REQUIRE(at != std::string::npos);
    write(path, text.replace(at, from.size(), to));
}

std::map<std::string, std::string> digests_below(const Path& folder) {
    const auto disk = real_disk();
    std::map<std::string, std::string> digests;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file()) digests[std::filesystem::relative(entry.path(), folder).string()] = digest_of(*disk, entry.path()).sha256;
    return digests;
}

std::vector<Path> files_below(const Path& folder, const std::string& extension) {
    std::vector<Path> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file() && entry.path().extension() == extension) files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    REQUIRE_FALSE(files.empty());
    return files;
}

}  // namespace qw::test
