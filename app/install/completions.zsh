#compdef holdfast
# SPDX-License-Identifier: GPL-3.0-or-later
# zsh completion for holdfast

_holdfast() {
    local -a verbs reports
    verbs=(
        'report:what the shop says today, as text'
        'tour:draw every place to PNG'
        'papers:write what is printed for the day'
        'check:look whether the shop file is whole'
        'mend:write rows again as their history has them'
        'save-what-can-be:bring what can be read of a damaged shop into a new file'
        'backup:write a whole copy of the shop'
        'backups:list the backups that are made by themselves'
        'put-back:say what would be lost if the shop became a backup'
        'export:write the whole shop as comma-separated values'
        'import:read one such file in'
        'take-orders:say what the orders of a web shop’s file would be'
        'due-days:write the promised days as a calendar'
        'forget:take a customer out for good'
    )
    reports=(walk use-first holds blanks buy promise cut figures)

    _arguments -C \
        '(--demo)--shop[the shop file]:shop file:_files' \
        '(--shop)--demo[the shop of the demo]' \
        '--on[the day for everything]:day, as YYYY-MM-DD:' \
        '--json[report as JSON]' \
        '--csv[report as comma-separated values; of buy]' \
        '--scale[how large the pictures of the tour are]:scale:(1 2)' \
        '--yes[put the backup back, take the orders]' \
        '--nameless[due days without the names of customers]' \
        '(- *)--help[say what can be asked]' \
        '(- *)--version[say the version and the licence]' \
        '1: :->first' \
        '2: :->second'
    case $state in
        first) _describe verb verbs; _files -g '*.holdfast' ;;
        second)
            case $words[(r)(report|tour|papers|export|backup|save-what-can-be|put-back|import|take-orders|due-days|forget)] in
                report) compadd -a reports ;;
                tour | papers | export) _files -/ ;;
                forget) _message 'name, phone number or order number' ;;
                *) _files ;;
            esac ;;
    esac
}

_holdfast "$@"
