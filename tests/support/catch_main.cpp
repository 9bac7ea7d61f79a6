// SPDX-License-Identifier: GPL-3.0-or-later
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

/// Weak, because the corpus is a program of its own that uses the tests' writers of artwork.
[[gnu::weak]] int main(int argc, char* argv[]) { return Catch::Session().run(argc, argv); }
