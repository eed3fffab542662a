# SPDX-License-Identifier: GPL-3.0-or-later
# fish completion for holdfast
set -l verbs report tour papers check mend save-what-can-be backup backups put-back export import take-orders due-days forget
set -l no_verb "not __fish_seen_subcommand_from $verbs"

complete -c holdfast -l shop -r -F -d 'The shop file'
complete -c holdfast -l demo -d 'The shop of the demo'
complete -c holdfast -l on -x -d 'The day for everything, as YYYY-MM-DD'
complete -c holdfast -l help -f -d 'Say what can be asked'
complete -c holdfast -l version -f -d 'Say the version and the licence'

complete -c holdfast -n $no_verb -a report -d 'What the shop says today, as text'
complete -c holdfast -n $no_verb -a tour -d 'Draw every place to PNG'
complete -c holdfast -n $no_verb -a papers -d 'Write what is printed for the day'
complete -c holdfast -n $no_verb -a check -d 'Look whether the shop file is whole'
complete -c holdfast -n $no_verb -a mend -d 'Write rows again as their history has them'
complete -c holdfast -n $no_verb -a save-what-can-be -d 'Bring what can be read into a new file'
complete -c holdfast -n $no_verb -a backup -d 'Write a whole copy of the shop'
complete -c holdfast -n $no_verb -a backups -d 'List the backups that are made by themselves'
complete -c holdfast -n $no_verb -a put-back -d 'Say what would be lost if the shop became a backup'
complete -c holdfast -n $no_verb -a export -d 'Write the whole shop as comma-separated values'
complete -c holdfast -n $no_verb -a import -d 'Read one such file in'
complete -c holdfast -n $no_verb -a take-orders -d 'Say what the orders of a web shop’s file would be'
complete -c holdfast -n $no_verb -a due-days -d 'Write the promised days as a calendar'
complete -c holdfast -n $no_verb -a forget -d 'Take a customer out for good'

complete -c holdfast -n '__fish_seen_subcommand_from report' -f -a 'walk use-first holds blanks buy promise cut figures'
complete -c holdfast -n '__fish_seen_subcommand_from report' -l json -d 'As JSON'
complete -c holdfast -n '__fish_seen_subcommand_from report' -l csv -d 'As comma-separated values; of buy'
complete -c holdfast -n '__fish_seen_subcommand_from tour' -l scale -x -a '1 2' -d 'How large the pictures are'
complete -c holdfast -n '__fish_seen_subcommand_from put-back' -l yes -d 'Put the backup back'
complete -c holdfast -n '__fish_seen_subcommand_from take-orders' -l yes -d 'Take the orders'
complete -c holdfast -n '__fish_seen_subcommand_from due-days' -l nameless -d 'Without the names of customers'
complete -c holdfast -n '__fish_seen_subcommand_from check mend backups forget' -f
