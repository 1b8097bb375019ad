# Rows that never end are refused, and do not fill the memory: one line without an end, and the same rows again and again.
# Where the program starts with so little: under the address sanitizer it does not.
little() { sh -c 'ulimit -v 400000; boilback --version; exit $?' >/dev/null 2>&1 && ulimit -v 400000; }
boilback explore uncertain.bath --samples 16 --threads 1 --csv rows.csv >/dev/null
endless() { "$@" | (little; timeout 60 boilback explore --merge /dev/stdin >/dev/null); }
(little; timeout 60 boilback explore --merge /dev/zero) >/dev/null
endless cat rows.csv /dev/zero
endless sh -c 'cat rows.csv; yes x | tr -d "\n"' 2>&1 | sed 's/stdin:[0-9]*/stdin:N/'
endless sh -c 'cat rows.csv; yes "$(tail -n 1 rows.csv)"' 2>&1
