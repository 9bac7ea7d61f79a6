#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Audits a kit of 44 sheets beside the least that it could cost: decoding its artwork once and rendering every page of every
# edition with the same library. Then audits it again with one picture changed. Speed is printed, never asserted.
# usage: audit.sh BUILD [FOLDER]   FOLDER (default /dev/shm) has room for 3 GB; outputs lie in memory, the disk does not decide.
set -eu
build=$(cd "$1" && pwd)
work=$(mktemp -d "${2:-/dev/shm}/bench-XXXXXX")
trap 'rm -rf "$work"' EXIT
jobs=2
TMPDIR=$work
export TMPDIR

# Seconds that a command takes; an audit may find something (1), but must not fail.
timed() {
  from=$(date +%s.%N)
  "$@" >"$work/said" 2>&1 || [ $? -eq 1 ] || { cat "$work/said" >&2; exit 3; }
  date +%s.%N | awk -v from="$from" '{ printf "%.2f", $1 - from }'
}

echo "load before: $(cut -d' ' -f1-3 /proc/loadavg)"
"$build/bench_make_kit" "$work/kit" 44
"$build/quirewright" release "$work/kit" --out "$work/released" --jobs $jobs >/dev/null
# The audit stands between two measures of the least, so that a machine that others use meanwhile falls on both alike.
least() { "$build/bench_decode_and_render" $jobs "$work/kit/art" "$work/released/bench-kit/1.0.0" | tee -a "$work/least" | tail -1; }
first=$(least)
whole=$(timed "$build/quirewright" audit "$work/kit" --out "$work/nothing" --jobs $jobs)
second=$(least)
mkdir -p "$work/out/bench-kit"
timed "$build/quirewright" audit "$work/kit" --out "$work/out" --jobs $jobs >/dev/null
cp "$work/kit/art/extras/1.png" "$work/kit/art/pages/7.png"
again=$(timed "$build/quirewright" audit "$work/kit" --out "$work/out" --jobs $jobs)
[ -n "$first" ] && [ -n "$second" ] || { echo "decoding and rendering alone failed" >&2; exit 3; }
head -1 "$work/least"
awk -v a="$first" -v b="$second" -v whole="$whole" -v again="$again" 'BEGIN {
  least = (a + b) / 2
  printf "%-44s%9s%8s\n", "", "seconds", "ratio"
  printf "%-44s%9.2f%8.2f\n", "decoding once, rendering every page", least, 1
  printf "%-44s%9.2f%8.2f\n", "audit", whole, whole / least
  printf "%-44s%9.2f%8.2f\n", "audit after one picture was changed", again, again / least
}'
echo "load after: $(cut -d' ' -f1-3 /proc/loadavg)"
