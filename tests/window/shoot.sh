#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Takes the pictures of screenshots/: tests/window/shoot.sh [BUILD [FOLDER [PAGE[:ROW]...]]].
# Every page on the demo day, in each look, 1200×800 and 400×800.
set -e
here=$(cd "$(dirname "$0")/../.." && pwd)
build=${1:-$here/build}
folder=${2:-$here/screenshots}
if [ $# -gt 2 ]; then shift 2; else set -- jobs gear light day weather shots shots:7 sorties pack checks checks:9 lists records briefs; fi
mkdir -p "$folder"
export GSETTINGS_BACKEND=memory GSETTINGS_SCHEMA_DIR="$build/data" GTK_A11Y=none \
  GSK_RENDERER=cairo LC_ALL=C.UTF-8 TZ=Europe/London
for page; do
  if [ -d "$here/src/window/pages/${page%:*}" ]; then
    sh "$here/tests/window/with-display" "$build/tests/window/shoot" "$folder" "$page"
  fi
done
