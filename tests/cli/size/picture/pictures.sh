command -v gnuplot >/dev/null || exit 77
magic() { # name, first bytes: says what is wrong
    [ "$(head -c ${#2} "$1")" = "$2" ] || echo "$1 does not begin with $2"
}
boilback size brimful.bath --plot out.pdf --units si >/dev/null && magic out.pdf '%PDF-'
boilback size calm.bath --recover 3min --load "1 lb per 2 gal" --plot out.png >/dev/null && magic out.png "$(printf '\211PNG')"
boilback size calm.bath --plot - >terminal
grep -q 'Slowest recovery' terminal || echo "nothing in the terminal"
grep -q '/ too little freeboard may be left' terminal || echo "the freeboard is not told"
awk 'length > 80' terminal
title='"; system("touch pwned") # `touch pwned` $(touch pwned) @m {/Bold x} a_b^c %s \n </text><script>'
sed "s|^title.*|title = $(printf '%s' "$title" | sed 's/[&\\|]/\\&/g')|" calm.bath >hostile.bath
boilback size hostile.bath --plot out.svg >/dev/null && magic out.svg '<?xml'
grep '<script' out.svg
grep -q 'kBtu/h to the tank bring every boil back within 2 min' out.svg || echo "the heat is not told"
find . -name pwned
