#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# On a bare Debian 12, as root or with sudo: installs, builds, releases the demo kits, says where to look.
set -eu
cd "$(dirname "$0")/.."
sh pipeline/set-up.sh build
cmake -S . -B build -G Ninja -DQW_TESTS=OFF >/dev/null
cmake --build build
for kit in tidewater-almanac lamplight-mini; do
  build/quirewright release "kits/$kit" --out dist
done
echo
echo "Look at:"
for kit in tidewater-almanac lamplight-mini; do
  for file in "dist/$kit"/*/audit.html "dist/$kit"/*/*.zip; do echo "  $file"; done
done
