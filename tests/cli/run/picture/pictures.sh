magic() { # name, first bytes: says what is wrong
    [ "$(head -c ${#2} "$1")" = "$2" ] || echo "$1 does not begin with $2"
}
command -v gnuplot >/dev/null || exit 77
boilback run calm.bath --plot out.svg >/dev/null && magic out.svg '<?xml'
boilback run calm.bath --plot out.pdf --units si >/dev/null && magic out.pdf '%PDF-'
boilback run calm.bath --plot out.PNG >/dev/null && magic out.PNG "$(printf '\211PNG')"
boilback run calm.bath --plot - | grep -q 'Level, in' || echo "nothing in the terminal"
exit 0
