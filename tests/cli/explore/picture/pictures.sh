command -v gnuplot >/dev/null || exit 77
magic() { # name, first bytes: says what is wrong
    [ "$(head -c ${#2} "$1")" = "$2" ] || echo "$1 does not begin with $2"
}
boilback explore uncertain.bath --samples 16 --csv rows.csv --plot out.svg >report && magic out.svg '<?xml'
boilback explore --merge rows.csv --plot again.svg >again && cmp report again && cmp out.svg again.svg || echo "not the same"
boilback explore uncertain.bath --samples 16 --plot out.pdf --units si >/dev/null && magic out.pdf '%PDF-'
boilback explore uncertain.bath --samples 16 --grid "heat input = 200 kBtu/h to 500 kBtu/h : 3" --plot out.png >/dev/null && magic out.png "$(printf '\211PNG')"
boilback explore calm.bath --grid "losses evaporation factor = 0.8 to 1.2 : 2" --plot - >terminal
grep -q 'losses evaporation factor' terminal || echo "no grid in the terminal"
boilback explore uncertain.bath --samples 16 --plot - >>terminal
grep -q 'of the slowest recovery' terminal || echo "no causes in the terminal"
awk 'length > 80' terminal
title='"; system("touch pwned") # `touch pwned` $(touch pwned) @m {/Bold x} a_b^c %s \n </text><script>'
sed "s|^title.*|title = $(printf '%s' "$title" | sed 's/[&\\|]/\\&/g')|" uncertain.bath >hostile.bath
boilback explore hostile.bath --samples 16 --plot out.svg >/dev/null || echo "failed"
grep '<script' out.svg
find . -name pwned
