// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/shell.h"

#include <array>
#include <cstdio>
#include <stdexcept>
#include <sys/wait.h>

namespace qw::test {

std::string quoted(const std::string& text) {
    std::string out = "'";
    for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

Said run(const std::string& command, const Path& folder) {
    const std::string line = "cd " + quoted(folder.string()) + " && { " + command + "\n} 2>&1 </dev/null";
    FILE* pipe = ::popen(line.c_str(), "r");
    if (!pipe) throw std::runtime_error("cannot start the shell");
    Said said;
    std::array<char, 4096> buffer{};
    while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe)) said.text.append(buffer.data(), n);
    const int status = ::pclose(pipe);
    said.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return said;
}

}  // namespace qw::test
