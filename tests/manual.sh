#!/bin/sh
# manual.sh STAGE -- everything help lists, and every word of the scenario language, is in the manual and in the
# completions; the pages are sound. STAGE is the tree to be installed (make stage). The last line is
# "N passed, N failed, N skipped".
stage=$(cd "$1" && pwd) || exit 2
program=$stage/bin/boilback
write=$stage/../src/manual/write # the writer of the pages lists the words by itself
share=$stage/share
bash_file=$share/bash-completion/completions/boilback
zsh_file=$share/zsh/site-functions/_boilback
fish_file=$share/fish/vendor_completions.d/boilback.fish
scenario_page=$share/man/man5/boilback-scenario.5
. "$(dirname "$0")/expect.sh"

has() { # command
    command -v "$1" >/dev/null 2>&1
}

commands() {
    "$program" --help | sed -n '/^commands:/,/^$/s/^  \([a-z][a-z-]*\).*/\1/p'
}

options() { # [command]
    "$program" ${1:+"$1"} --help | sed -n 's/^  --\([a-z-]*\).*/\1/p' | sort
}

page_of() { # [command]
    echo "$share/man/man1/boilback${1:+-$1}.1"
}

# The options that a page explains: the terms of its hanging paragraphs.
options_in_page() { # [command]
    sed -n '/^\.TP/{n;s/^\\fB\\-\\-\([^ ]*\)\\fR.*/\1/p;}' "$(page_of "$1")" | sed 's/\\-/-/g' | sort
}

bash_offers() { # word...: the last one is to be completed
    bash --norc -c '. "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _boilback; printf "%s\n" "${COMPREPLY[@]}"' \
        "$bash_file" "$@" 2>/dev/null
}

options_in_bash() { # [command]
    bash_offers boilback ${1:+"$1"} -- | sed -n 's/^--//p' | sort
}

# Of a command: the options in its branch of the case; of the program: those before it.
options_in_zsh() { # [command]
    if [ -n "$1" ]; then
        sed -n "/^    $1)\$/,/^        ;;/p" "$zsh_file"
    else
        sed '/case/,$d' "$zsh_file"
    fi | sed -n "s/^ *'\((- \*)\)\{0,1\}--\([a-z-]*\)=\{0,1\}\[.*/\2/p" | sort
}

options_in_fish() { # [command]
    if [ -n "$1" ]; then
        sed -n "s/.*_from $1' -l \([a-z-]*\) .*/\1/p" "$fish_file"
    else
        sed -n "s/.*__fish_use_subcommand -l \([a-z-]*\) .*/\1/p" "$fish_file"
    fi | sort
}

same_options() { # where [command]: there and in help
    options "$2" >"$work/help"
    "options_in_$1" "$2" >"$work/there"
    [ -s "$work/help" ] && diff "$work/help" "$work/there"
}

# The words of "--units us|si" in help.
choices() { # command
    "$program" "$1" --help | sed -n 's/^  --\([a-z-]*\) \([^ ]*|[^ ]*\).*/\1 \2/p'
}

offers_choices() { # command option words
    bash_offers boilback "$1" "--$2" '' | tr '\n' '|' | grep -qxF "$3|" &&
        bash_offers boilback "$1" "--$2" = '' | tr '\n' '|' | grep -qxF "$3|"
}

fish_offers() { # line
    # shellcheck disable=SC2016 # fish expands these
    fish --no-config -c 'source $argv[1]; complete -C $argv[2]' "$fish_file" "$1" 2>/dev/null | cut -f1
}

offers_command() {
    bash_offers boilback '' | grep -qx "$1"
}

bath_is_offered() { # command: scenarios and folders, and nothing else
    (cd "$work/files" && bash_offers boilback "$1" '' | tr '\n' ' ' | grep -qx 'a b.bath folder ') || return 1
    if has fish; then (cd "$work/files" && fish_offers "boilback $1 a" | grep -qx 'a b.bath'); fi
}

# What a page says without roff's masks.
plain() { # page
    sed 's/\\f[BIR]//g; s/\\(aq/'"'"'/g; s/\\-/-/g; s/\\&//g' "$1"
}

key_is_there() { # key
    plain "$scenario_page" | grep -q "^$1 = [A-Za-z]"
}

# The entry of a key, up to the next one, names this default.
names_default() { # key value
    awk -v key="$1 = " -v value="Default: $2" '
        /^\.TP/ { getline; inside = index($0, key) == 1; next }
        inside && index($0, value) == 1 { found = 1 }
        END { exit !found }' "$work/plain"
}

# A term must be one line to roff: what follows it is a sentence, not the rest of a form.
terms_are_whole() { # page
    awk '
        /^\.TP/ { inside = 1; next }
        inside { inside = $0 ~ /\\$/; follows = !inside; next }
        follows && /^(\[|\||\\f)/ { print FILENAME ":" FNR ": " $0; bad = 1 }
        { follows = 0 }
        END { exit bad }' "$1"
}

sound() { # page
    terms_are_whole "$1" || return 1
    if has mandoc; then
        mandoc -Tlint -Wall "$1" | tee "$work/lint"
        [ ! -s "$work/lint" ] || return 1
    fi
    if has groff; then
        groff -man -ww -Tutf8 "$1" 2>&1 >/dev/null | tee "$work/lint"
        [ ! -s "$work/lint" ] || return 1
    fi
    [ "$(sed -n 's/^\.SH //p' "$1" | head -1)" = NAME ] && ! grep -q 'BOIL_' "$1"
}

# Settings that the program takes by default, as it says itself: "key|value", US.
defaults_taken() {
    plain "$work/example" | "$program" check - |
        sed -n 's/^ \([a-z][a-z -]*[a-z]\)   *\([^ ].*[^ ]\)  *default$/\1|\2/p' | sed 's/  .*//'
}

example_is_right() {
    sed -n '/^\.EX/,/^\.EE/p' "$scenario_page" | sed '/^\.E[XE]/d' >"$work/example"
    plain "$work/example" | "$program" check - >/dev/null
}

mkdir -p "$work/files/folder"
touch "$work/files/a b.bath" "$work/files/other.txt"

for command in '' $(commands); do
    expect "page of '$command' explains what help lists" same_options page "$command"
    expect "zsh offers the options of '$command'" same_options zsh "$command"
    expect "fish offers the options of '$command'" same_options fish "$command"
    expect "page of '$command' is sound" sound "$(page_of "$command")"
    has bash || continue
    expect "bash offers the options of '$command'" same_options bash "$command"
    [ -n "$command" ] || continue
    expect "bash offers '$command'" offers_command "$command"
    expect "the program's page leads to '$command'" grep -q "boilback\\\\-$command (1)" "$(page_of '')"
    choices "$command" >"$work/choices"
    while read -r option words; do
        expect "bash offers $words behind --$option" offers_choices "$command" "$option" "$words"
    done <"$work/choices"
    if "$program" "$command" --help | grep -q "^usage: boilback $command FILE"; then
        expect "scenarios are offered to '$command'" bath_is_offered "$command"
    fi
done

"$write" settings >"$work/keys"
expect "the table of keys was found" [ "$(grep -c . "$work/keys")" -ge 40 ]
while IFS= read -r key; do
    expect "the scenario page has the key '$key'" key_is_there "$key"
done <"$work/keys"

"$write" acts >"$work/words"
expect "verbs, shapes and clauses were found" [ "$(grep -c . "$work/words")" -ge 16 ]
plain "$scenario_page" >"$work/plain"
while IFS= read -r word; do
    expect "the scenario page has '$word'" grep -q "^$word [A-Z[a-z]" "$work/plain"
done <"$work/words"

"$write" units >"$work/units"
expect "the table of units was found" [ "$(grep -c . "$work/units")" -ge 50 ]
sed -n '/^\.SH UNITS/,/^\.SH/p' "$scenario_page" | sed 's/ (.*//; s/[;.]$//' >"$work/listed"
while IFS= read -r unit; do
    expect "the scenario page has the unit '$unit'" grep -qxF "$unit" "$work/listed"
done <"$work/units"

output_page=$share/man/man5/boilback-output.5
plain "$output_page" >"$work/outputs"
cat "$share"/boilback/schema/*.json | sed -n 's/^ *"\([A-Za-z0-9_]*\)": {$/\1/p' | grep -vxE 'properties|items|additionalProperties' |
    sort -u >"$work/keys"
expect "keys of JSON were found" [ "$(grep -c . "$work/keys")" -ge 150 ]
while IFS= read -r key; do
    expect "the output page has '$key'" grep -qE "^([^ ]*[].*])?$key \(" "$work/outputs"
done <"$work/keys"
expect "the output page is sound" sound "$output_page"

plain "$share/man/man7/boilback-guide.7" >"$work/guide"
choices run | sed -n 's/^of //p' | tr '|' '\n' >"$work/runs"
expect "the runs of the set were found" [ "$(grep -c . "$work/runs")" -ge 9 ]
while IFS= read -r run; do
    expect "the guide tells the run '$run'" grep -q "^$run: [a-z]" "$work/guide"
done <"$work/runs"

expect "the scenario page is sound" sound "$scenario_page"
expect "the guide is sound" sound "$share/man/man7/boilback-guide.7"
expect "the limits are sound" sound "$share/man/man7/boilback-limits.7"
expect "the example of the scenario page is right" example_is_right
defaults_taken >"$work/defaults"
expect "defaults were found" [ "$(grep -c . "$work/defaults")" -ge 15 ]
while IFS='|' read -r key value; do
    expect "the scenario page has the default of '$key'" names_default "$key" "$value"
done <"$work/defaults"
expect_with zsh "zsh reads its completion" zsh -n "$zsh_file"
expect_with fish "fish reads its completion" fish --no-execute "$fish_file"
expect_with shellcheck "the completion for bash is sound" shellcheck "$bash_file"
has mandoc || has groff || skip "what a reader of manual pages says of them (no mandoc, no groff)"
has bash || skip "what the completion for bash offers (no bash)"

finish
