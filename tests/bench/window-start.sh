#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# window-start.sh WITH-DISPLAY BENCH EMPTY FIELDFARE FIELDFARECTL
set -e
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"$5" demo --data-dir "$folder" >/dev/null
"$1" "$2" "$3" "$4" "$folder"
