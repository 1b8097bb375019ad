# The page of the longest shipped scenario is under 1 MiB.
command -v gnuplot >/dev/null || exit 77
boilback run "$BOILBACK_DATA/scenarios/weekend.bath" --html page.html >/dev/null
[ "$(wc -c <page.html)" -lt 1048576 ] || echo "$(wc -c <page.html) bytes"
exit 0
