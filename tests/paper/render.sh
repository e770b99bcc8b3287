#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Takes the pictures of tests/paper/: tests/paper/render.sh [BUILD [FOLDER]]. Every sheet of the demo
# day at 150 dpi in black and white without a grey, as a cheap printer or a photocopy leaves it. Look
# at each as its reader would. Needs poppler-utils and ImageMagick.
set -e
here=$(cd "$(dirname "$0")/../.." && pwd)
build=${1:-$here/build}
folder=${2:-$here/tests/paper}
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT
export LC_ALL=C.UTF-8 TZ=UTC SOURCE_DATE_EPOCH=1821000000
kit="$build/src/console/fieldfarectl --data-dir $work/data"
$kit demo > "$work/out"
$kit brief Skarrowick -o "$work/brief.pdf" --slips --pack --spoken --amendments > "$work/out"
pdftoppm -r 150 -mono "$work/brief.pdf" "$work/page"
rm -f "$folder"/page-*.png
for page in "$work"/page-*.pbm; do
  convert "$page" -define png:compression-level=9 -define png:bit-depth=1 \
    "$folder/$(basename "$page" .pbm).png"
done
