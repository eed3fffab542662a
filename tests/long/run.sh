#!/usr/bin/env bash
# Tests that take hours, run by hand and not with tests/run.sh. They need nothing beforehand.
#   bash tests/long/run.sh small_changes [--changes 300] [--seed 1] [--only core/film]
#     Makes small changes in core, one at a time, and says which of them no test of core or db catches.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

case ${1:-} in
small_changes)
    shift
    need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev python3
    exec python3 "$top/tests/long/small_changes.py" "$@"
    ;;
*)
    sed -n '2,4s/^# //p' "${BASH_SOURCE[0]}"
    exit 2
    ;;
esac
