# On the page what hangs already has a bar each from the start on, in its own place, one below the other.
sed -e 's/^jobs .*//' -e 's/^positions .*/positions = 3/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >shift.bath
cat >>shift.bath <<'END'

[jobs]
brackets 80 lb, plate 1/4 in, for 15 min to 30 min, basket 15 lb
pins     60 lb, bar 3/4 in, for 20 min to 40 min, basket 15 lb
covers   45 lb, plate 1/8 in, for 15 min to 30 min, basket 10 lb

[now]
clock = 7:01
reads = 287 degF
boils = yes
level = 19.6 in
in the tank = pins since 6:50
in the tank = brackets since 6:41, out by 7:04
END
boilback plan shift.bath --now --html page.html >/dev/null
grep -o '<rect x="90.0" y="[^"]*".*fill="#dddddd"' page.html | sed 's/ width.*//'
grep -o '<text x="94.0" y="[^"]*">[a-z]*' page.html
