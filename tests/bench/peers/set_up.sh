#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# set_up.sh FOLDER: installs the libraries of package.json in FOLDER (in build/, never here), with pack.mjs beside them.
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
folder=$1
mkdir -p "$folder"
cp "$here/package.json" "$here/pack.mjs" "$folder/"
npm install --prefix "$folder" --ignore-scripts --no-audit --no-fund >&2
