#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# What a careful person does with general tools: flatten every picture on white, embed all losslessly for two papers,
# measure each page, store everything in one zip, check PDFs and zip, write digests.
# usage: by_hand.sh KIT OUT     (steps and their seconds on standard error)
set -eu
kit=$1 out=$2
mkdir -p "$out/flat"
now() { date +%s.%N; }
step() { now | awk -v name="$1" -v from="$2" '{ printf "  %s: %.1f s\n", name, $1 - from }' >&2; }

t=$(now)
find "$kit/art" -name '*.png' | sort -V | while read -r file; do
  name=$(echo "${file#"$kit"/art/}" | tr / -)
  # Packed fast: at its usual effort ImageMagick needs ten times as long, which no careful person would wait for.
  convert "$file" -background white -alpha remove -alpha off -define png:compression-level=1 -define png:compression-filter=1 "$out/flat/$name"
done
step flatten "$t"
t=$(now)
for paper in Letter A4; do
  find "$out/flat" -name '*.png' | sort -V | xargs img2pdf --pagesize "$paper^T" --fit fill -o "$out/$paper.pdf"
done
step "embed twice" "$t"
t=$(now)
for file in "$out"/flat/*.png; do
  convert "$file" -format '%f %wx%h mean %[fx:mean] ' -write info:- -threshold 97% -format 'ink %@\n' info:-
done >"$out/measured.txt"
step measure "$t"
t=$(now)
(cd "$out" && sha256sum Letter.pdf A4.pdf >contents.txt && zip -q -0 bundle.zip Letter.pdf A4.pdf contents.txt)
step store "$t"
t=$(now)
qpdf --check "$out/Letter.pdf" >/dev/null
qpdf --check "$out/A4.pdf" >/dev/null
unzip -tqq "$out/bundle.zip"
step check "$t"
