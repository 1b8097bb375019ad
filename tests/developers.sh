#!/bin/sh
# developers.sh -- every path, make target and C name that stands between backticks in DEVELOPERS.md and README.md is there, and
# the papers keep their size. The last line is "N passed, N failed, N skipped".
. "$(dirname "$0")/expect.sh"

named() { # between backticks, one a line
    grep -o '`[^`]*`' DEVELOPERS.md README.md | sed 's/^[^:]*:`//; s/`$//' | LC_ALL=C sort -u
}

target() { # make target
    sed -n 's/^\([a-z][a-z -]*\):\( .*\)\{0,1\}$/ \1 /p' Makefile | grep -q -- " $1 " || [ -e "${1#build/}.c" ]
}

in_sources() { # a C name
    grep -rqw --include='*.[ch]' -e "$1" model src
}

at_most() { # lines file
    [ "$(wc -l <"$2")" -le "$1" ]
}

expect "README.md has at most 150 lines" at_most 150 README.md
expect "DEVELOPERS.md has at most 110 lines" at_most 110 DEVELOPERS.md
named >"$work/named"
expect "names were found" [ "$(grep -c / "$work/named")" -ge 20 ]
while IFS= read -r name; do
    case $name in
    "make "*)
        for word in ${name#make }; do
            case $word in *=* | -*) ;; *) expect "make $word is a target" target "$word" ;; esac
        done
        ;;
    /usr/*) ;; # the distribution's
    build/*) ;; # made
    *" "*) expect "the program knows '${name%% *}'" grep -rqw -e "${name%% *}" src tests ;;
    */* | *.c | *.h | *.md | *.sh) case $name in */*) expect "$name is there" [ -e "$name" ] ;; esac ;;
    *_* | event) expect "$name is a C name" in_sources "$name" ;;
    esac
done <"$work/named"
finish
