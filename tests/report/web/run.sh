#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# usage: run.sh PROGRAM RELEASED WORK   Three reports in a browser: the demo kit's, one with many findings of every level, one
# of a bundle that nobody knows.
set -eu
program=$1 released=$2 work=$3
here=$(cd "$(dirname "$0")" && pwd)
rm -rf "$work"
mkdir -p "$work/foreign"
cp "$here/package.json" "$here/package-lock.json" "$here/check.mjs" "$work"
cd "$work"
npm ci --no-audit --no-fund --silent

"$program" begin "$work/spoilt" >/dev/null
cat >>spoilt/kit.yaml <<'YAML'
rules:
  artwork-ppi-low: { limit: 900, reason: "so that there is something to say" }
  artwork-safe-area: { limit: 30 mm, reason: "so that there is something to say" }
  ink-heavy: { limit: 1, reason: "so that there is something to say" }
  misprint-shift: { limit: 25 mm, reason: "so that there is something to say" }
YAML
"$program" audit spoilt --out none --html spoilt.html >spoilt.txt && { echo "The spoilt kit is fit for sale" >&2; exit 1; }
grep -q '^error' spoilt.txt && grep -q '^warning' spoilt.txt
echo "a note" >foreign/readme.txt
(cd foreign && zip -q ../foreign.zip readme.txt)
"$program" audit foreign.zip --out none --html foreign.html >/dev/null || true
node check.mjs "$released/tidewater-almanac/1.0.0/audit.html" "$work/spoilt.html" "$work/foreign.html"
