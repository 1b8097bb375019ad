cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
boilback plan five-jobs.bath --write morning.bath
sed -n '/^\[schedule\]/,$p' morning.bath
boilback run morning.bath --strict | sed -n '1,3p'
