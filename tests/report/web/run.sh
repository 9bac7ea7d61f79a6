#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# The report's page as a browser, a keyboard, a printer and those who listen have it.
# usage: sh run.sh QUIREWRIGHT RELEASED SCRATCH   (RELEASED: the demo kits' release folders, of the test program.release)
set -eu
program=$1 released=$2 scratch=$3
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$scratch"
# What is installed is the lock file's, and stays in the build folder as long as that does not change.
if ! cmp -s "$here/package-lock.json" "$scratch/installed-lock.json"; then
  cp "$here/package.json" "$here/package-lock.json" "$scratch/"
  # Node.js has certificates of its own, and knows those of the system only when it is told.
  [ -n "${NODE_EXTRA_CA_CERTS:-}" ] || [ ! -f /etc/ssl/certs/ca-certificates.crt ] || export NODE_EXTRA_CA_CERTS=/etc/ssl/certs/ca-certificates.crt
  if (cd "$scratch" && npm ci --ignore-scripts --no-audit --no-fund --fetch-retries=1 --loglevel=error); then
    cp "$here/package-lock.json" "$scratch/installed-lock.json"
  fi
fi
cp "$here/page.mjs" "$scratch/"

# Findings of each level: three faces, drawn too small for their paper and with little safe area, and an alpha channel.
rm -rf "$scratch/many" "$scratch/foreign"
rm -f "$scratch/foreign.zip"
art=$here/../../../kits/tidewater-almanac/art
mkdir -p "$scratch/many/art/pages" "$scratch/many/art/covers"
cp "$art/pages/01.png" "$art/pages/02.png" "$art/pages/03.png" "$scratch/many/art/pages/"
cp "$art/covers/cover-1.jpg" "$art/extras/extra-1.png" "$scratch/many/art/covers/"
cat >"$scratch/many/kit.yaml" <<'KIT'
kit: many-findings
title: Many Findings
version: 1.0.0
date: 2026-09-01
journal: soft-spine
papers: [letter]
prints: [borderless, bordered]
printer: most-home-printers
board-stock: greyboard-1mm
borders: trimmed
sets:
  journal-pages: { role: journal-page, files: art/pages/*.png, sides: duplex, drawn-at: 272 x 199.2 mm, safe-area: 4 mm, place: as-drawn, stock: copy-100 }
  full-sheets: { role: full-sheet, files: [art/covers/*.jpg, art/covers/*.png], drawn-at: 303 x 221.9 mm, place: cover, stock: copy-80, print-at: 100 % }
rules:
  artwork-ppi: { limit: 900 ppi, reason: "drawn for a larger print too" }
KIT
mkdir "$scratch/foreign"
printf 'not one of ours\n' >"$scratch/foreign/read-me.txt"
(cd "$scratch/foreign" && zip -q ../foreign.zip read-me.txt)
for subject in many foreign.zip; do
  status=0
  "$program" audit "$scratch/$subject" --html "$scratch/${subject%.zip}.html" >"$scratch/${subject%.zip}.txt" || status=$?
  [ "$status" -le 1 ] || { echo "the audit of $subject ended with $status" >&2; exit 1; }
done
demo=$(find "$released" -path '*tidewater-almanac/*' -name audit.html | head -n 1)
if [ -f "$scratch/installed-lock.json" ]; then
  exec node "$scratch/page.mjs" "$demo" "$scratch/many.html" "$scratch/foreign.html"
fi
# Where npm reaches nothing, a browser by itself still tells whether the pages are whole.
echo "npm could not install axe-core and playwright-core: accessibility was not judged, the pages were only opened." >&2
for page in "$demo" "$scratch/many.html" "$scratch/foreign.html"; do
  chromium --headless --no-sandbox --disable-gpu --dump-dom "file://$page" 2>/dev/null >"$scratch/opened.html"
  grep -q 'it for sale' "$scratch/opened.html" && grep -q '</html>' "$scratch/opened.html" || { echo "$page does not open whole" >&2; exit 1; }
done
