# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by app/run.sh and tests/run.sh: installs Debian packages that are missing, and says so.
# Everything it says goes to standard error.

say() { printf '%s\n' "$*" >&2; }

is_installed() { dpkg-query -W -f='${Status}' "$1" 2>/dev/null | grep -q 'ok installed'; }
# A name that is only provided by others shows nothing.
is_known() { [ -n "$(apt-cache show "$1" 2>/dev/null)" ]; }

as_root() {
    if [ "$(id -u)" = 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        say "Packages must be installed: run this as root, or install sudo."
        return 1
    fi
}

# need_packages WHY PACKAGE...
# "a|b" is the first of them that this Debian knows: names differ between Debian 12 and 13.
need_packages() {
    local why=$1 missing=() chosen=() names first name
    shift
    for names in "$@"; do
        is_installed "${names%%|*}" || missing+=("$names")
    done
    [ ${#missing[@]} -gt 0 ] || return 0

    is_known g++ || as_root apt-get update -qq >&2
    for names in "${missing[@]}"; do
        first=
        for name in ${names//|/ }; do
            if is_known "$name"; then
                first=$name
                break
            fi
        done
        if [ -z "$first" ]; then
            say "Debian has no package ${names//|/ or }. Is this Debian 12 or 13?"
            return 1
        fi
        is_installed "$first" || chosen+=("$first")
    done
    [ ${#chosen[@]} -gt 0 ] || return 0

    say "Installing what is needed $why: ${chosen[*]}"
    as_root apt-get update -qq >&2 || say "The package lists could not be renewed; going on with the old ones."
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${chosen[@]}" >&2
}

# libqt6opengl6-dev is only recommended by qt6-charts-dev, yet Qt Charts is not found without it.
build_packages=(ca-certificates g++ cmake ninja-build ccache pkg-config qt6-base-dev "libqt6opengl6-dev|qt6-base-dev"
    libgl-dev libvulkan-dev qt6-charts-dev qt6-svg-dev libsqlite3-dev libsodium-dev libqrencode-dev libcups2-dev
    libcanberra-dev)
