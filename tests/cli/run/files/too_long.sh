# A file longer than what is allowed is a failed write like any other: said, and nothing is left.
(ulimit -S -f 1 && boilback run calm.bath --csv out.csv --step "1 s" | sed -n 1p) 2>&1
(ulimit -S -f 1 && boilback run calm.bath --csv out.csv --step "1 s" >/dev/null)
echo "exit $?"
ls | grep -v bath || true
