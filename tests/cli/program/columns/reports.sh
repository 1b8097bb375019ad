# No line of a report is over 80 columns: no command, no way to ask it.
. "$BOILBACK_DATA/tests/columns.sh"
printf '%s\n' "$(printf '%78s' '' | tr ' ' -)äöü" "$(printf '%77s' '' | tr ' ' -)äöü" | wide
sed 's/^title .*/title = äöü_ohne_eine_einzige_Lücke_in_all_seinen_sechzig_Buchstaben_und/' names.bath >word.bath
for bath in names.bath word.bath; do
    for how in '' --full --verbose --brief '--full --units si'; do look run $bath $how; done
    look check $bath
    look charge $bath
    look charge $bath --units si --liquid --liquid-strength '48 %' --from '5 in' --from-strength '30 %'
    look correct $bath --reads '291 degF +- 2 degF' --boiling-level '36.5 in'
    look correct $bath --reads '280 degF' --level '26 in' --units si
    look compare $bath calm.bath
    look compare calm.bath $bath --full --units si
    look lesson $bath calm.bath
    look lesson $bath --units si
done
look solution --salts '78.12 % NaOH, 16.34 % NaNO3, 5.54 % NaNO2' --boiling-point '285 degF'
look solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --table --from '215 degF' --to '350 degF' --step '5 degF'
for command in run check charge correct size compare lesson explore fit solution; do look $command --help; done
look --help
look --version
