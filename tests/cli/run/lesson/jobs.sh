# What looks calm has none of the jobs in it: that is said.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
boilback run five-jobs.bath | sed -n '1,3p'
boilback compare five-jobs.bath five-jobs.bath --json >/dev/null
