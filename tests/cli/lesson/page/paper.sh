# What paper says: its title, the four moments of both, and on one clock what was done and what came of it, as much as a page holds.
# Then what the script is told beside the rows: where a lesson asks, and of each run its tank, the slow spans, the loads and the pours.
paper() {
    sed -n '/<section id="sheet"/,/<\/section>/p' page.html | sed -e '/^<svg/d' -e 's/<tr class="more">/(screen only) /' \
        -e 's/<\/th>/ | /g; s/<\/td>/ | /g; s/<[^<>]*>//g' | grep -v '^ *$'
}
frame() {
    sed -n -e '/<title>/p' -e '/<header>/,/<\/header>/p' -e '/<footer/,/<\/footer>/p' page.html |
        sed -e 's/<[^<>]*>//g; s/ [0-9.]* from / from /; s, /[^ ]*/, HERE/,g' | grep -v '^ *$'
}
told() {
    sed -n -e '/^{"us"/p; /^"stops"/,/^"hint"/p; /^{"tank"/{s/"rows".*//;p;}; /^"slow"/p; /^"loads"/p; /^"pours"/p' page.html
}
boilback lesson "$BOILBACK_DATA"/scenarios/lessons/06-*.bath --html page.html >/dev/null
frame
paper
boilback lesson night.bath --html page.html --units si >/dev/null
paper | sed -n '/^Clock/,/^In your/p'
boilback lesson calm.bath coil.bath --html page.html >/dev/null
frame
boilback lesson "$BOILBACK_DATA"/scenarios/lessons/01-*.bath --html page.html >/dev/null
told
