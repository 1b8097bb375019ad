# Rows that never end are refused, and do not fill the memory: one line without an end, and the same rows again and again.
boilback explore uncertain.bath --samples 16 --threads 1 --csv rows.csv >/dev/null
endless() { "$@" | (ulimit -v 400000; timeout 60 boilback explore --merge /dev/stdin >/dev/null); }
(ulimit -v 400000; timeout 60 boilback explore --merge /dev/zero) >/dev/null
endless cat rows.csv /dev/zero
endless sh -c 'cat rows.csv; yes x | tr -d "\n"' 2>&1 | sed 's/stdin:[0-9]*/stdin:N/'
endless sh -c 'cat rows.csv; yes "$(tail -n 1 rows.csv)"' 2>&1
