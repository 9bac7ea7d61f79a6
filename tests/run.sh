#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs, builds and runs every test: unit tests, the same under ASan and UBSan, and whole-program tests.
# A test that was skipped counts as failed; a skip must be taken out of the list or given its reason there.
set -eu
cd "$(dirname "$0")/.."
sh pipeline/set-up.sh tests
sh tests/locales.sh
cmake -S . -B build -G Ninja -DQW_TESTS=ON >/dev/null
cmake --build build
log=build/ctest.log
status=0
(cd build && ctest --output-on-failure --no-tests=error -j 2 2>&1) | tee "$log" || true
grep -q '^100% tests passed' "$log" || status=1
if grep -Eq '\*\*\*(Skipped|Not Run)|tests did not run' "$log"; then
  echo "A test was skipped without a stated reason." >&2
  status=1
fi
exit $status
