#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs what Quirewright needs on Debian 12. usage: sh pipeline/set-up.sh build|tests
# Needs root or sudo only when something is missing.
set -eu

build="cmake ninja-build g++ pkg-config libpodofo-dev libzip-dev libutf8proc-dev libyaml-cpp-dev libspdlog-dev libcli11-dev
  libjpeg-dev liblcms2-dev libisal-dev libdeflate-dev libpoppler-cpp-dev libqpdf-dev libfreetype-dev
  libfontconfig-dev libmuparser-dev nlohmann-json3-dev libkainjow-mustache-dev libpolyclipping-dev libssl-dev zlib1g-dev
  fontconfig fonts-lato fonts-vollkorn"
# outside judges, PngSuite (in libsixel-examples), the tools that the speed comparison runs beside, and packages whose
# documents are PDFs of many producers (the last three; where dpkg leaves documents out it is told to bring them)
tests="catch2 libpng-dev libsixel-examples qpdf poppler-utils ghostscript mupdf-tools unzip zip libarchive-tools locales img2pdf imagemagick python3
  chromium groff graphviz-doc fonts-sil-andika"
# Node.js often comes from elsewhere, with an npm of its own that Debian's would not stand beside.
command -v npm >/dev/null 2>&1 || tests="$tests nodejs npm"

case "${1:-}" in
  build) wanted=$build ;;
  tests) wanted="$build $tests" ;;
  *) echo "usage: sh pipeline/set-up.sh build|tests" >&2; exit 2 ;;
esac

missing=
for package in $wanted; do
  case "$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)" in
    "install ok installed") ;;
    *) missing="$missing $package" ;;
  esac
done
[ -n "$missing" ] || exit 0

as_root=
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null 2>&1 || { echo "These packages are missing; install them as root:$missing" >&2; exit 3; }
  as_root=sudo
fi
echo "Installing:$missing"
log=$(mktemp)
$as_root apt-get update -q >/dev/null
# shellcheck disable=SC2086
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends \
  -o 'DPkg::Options::=--path-include=/usr/share/doc/*' $missing >"$log" 2>&1 || {
  tail -20 "$log" >&2; rm -f "$log"; exit 3; }
rm -f "$log"
