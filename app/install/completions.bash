# SPDX-License-Identifier: GPL-3.0-or-later
# bash completion for holdfast
_holdfast() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} verb= each at
    local verbs="report tour papers check mend save-what-can-be backup backups put-back export import take-orders due-days forget"
    local reports="walk use-first holds blanks buy promise cut figures"
    local options="--shop --demo --on --help --version"

    for ((at = 1; at < COMP_CWORD; at++)); do
        for each in $verbs; do
            [ "${COMP_WORDS[at]}" = "$each" ] && verb=$each && break 2
        done
    done
    case $verb in
        report) options+=" --json --csv" ;;
        tour) options+=" --scale" ;;
        put-back | take-orders) options+=" --yes" ;;
        due-days) options+=" --nameless" ;;
    esac

    COMPREPLY=()
    case $before in
        --on | forget) return ;;
        --scale) mapfile -t COMPREPLY < <(compgen -W "1 2" -- "$word"); return ;;
        report) mapfile -t COMPREPLY < <(compgen -W "$reports" -- "$word"); return ;;
        tour | papers | export) compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- "$word"); return ;;
        --shop | save-what-can-be | backup | put-back | import | take-orders | due-days)
            compopt -o filenames
            mapfile -t COMPREPLY < <(compgen -f -- "$word")
            return ;;
    esac
    if [[ $word == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
    elif [ -z "$verb" ]; then
        compopt -o filenames
        mapfile -t COMPREPLY < <(compgen -W "$verbs" -- "$word"; compgen -f -X '!*.holdfast' -- "$word"; compgen -d -- "$word")
    fi
}
complete -F _holdfast holdfast
