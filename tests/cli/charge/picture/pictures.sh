command -v gnuplot >/dev/null || exit 77
boilback charge calm.bath --plot out.svg >list && [ "$(head -c 5 out.svg)" = '<?xml' ] || echo "no svg"
boilback charge calm.bath | cmp - list
boilback charge calm.bath --from '10 in' --from-strength '45 %' --units si --plot out.pdf >/dev/null && [ "$(head -c 5 out.pdf)" = '%PDF-' ] || echo "no pdf"
boilback charge calm.bath --plot - >terminal
grep -q 'boils at' terminal || echo "nothing in the terminal"
awk 'length > 80' terminal
title='"; system("touch pwned") # `touch pwned` $(touch pwned) @m {/Bold x} a_b^c %s \n </text><script>'
sed "s|^title.*|title = $(printf '%s' "$title" | sed 's/[&\\|]/\\&/g')|" calm.bath >hostile.bath
boilback charge hostile.bath --plot out.svg >/dev/null || echo "failed"
grep '<script' out.svg
find . -name pwned
