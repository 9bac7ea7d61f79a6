// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/png_suite.h"

#include "support/shell.h"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace qw::test {

namespace {

std::vector<std::byte> bytes_of_file(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(in)), {});
    const auto* bytes = reinterpret_cast<const std::byte*>(text.data());
    return {bytes, bytes + text.size()};
}

}  // namespace

std::vector<SuitePicture> png_suite() {
    std::istringstream paths(run("dpkg -L libsixel-examples | grep '/pngsuite/.*[.]png$'", "/").text);
    std::vector<SuitePicture> all;
    for (std::string path; std::getline(paths, path);) all.push_back({Path(path).stem().string(), bytes_of_file(path)});
    std::sort(all.begin(), all.end(), [](const SuitePicture& a, const SuitePicture& b) { return a.name < b.name; });
    for (const SuitePicture& picture : all)
        if (picture.bytes.empty() || picture.name.size() != 8) throw std::runtime_error("PngSuite cannot be read: " + picture.name);
    if (all.size() < 170) throw std::runtime_error("PngSuite is not there: install the tests' packages (pipeline/set-up.sh)");
    return all;
}

}  // namespace qw::test
