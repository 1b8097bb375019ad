# On a terminal it is told how far it is, the last run at once, however soon it comes after what was told before it.
script -qec true /dev/null >/dev/null 2>&1 || exit 77
script -qec 'boilback explore uncertain.bath --samples 4 >report.txt' /dev/null | tr '\r' '\n' | sed 's, *$,,' | tail -n 2
