#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Holdfast and packs it for Debian: build/holdfast_VERSION_ARCHITECTURE.deb, whose path goes to standard output.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

need_packages "to pack Holdfast" "${build_packages[@]}" dpkg-dev file

build=$top/build/package
[ -f "$build/build.ninja" ] || cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON \
    -DCMAKE_INSTALL_PREFIX=/usr >&2
say "Building Holdfast; the first time takes some minutes"
ninja -C "$build" --quiet holdfast >&2
rm -rf "$build/packages"
(cd "$build" && cpack -G DEB -B packages) >&2
cp "$build"/packages/holdfast_*.deb "$top/build/"
(cd "$build/packages" && for package in holdfast_*.deb; do echo "$top/build/$package"; done)
