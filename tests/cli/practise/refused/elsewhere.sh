# What is asked for in the wrong place, and where it is.
boilback practise lessons
boilback lesson --lessons
boilback lesson --save=worked.bath worked.bath
boilback run --plan jobs.bath
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.csv "$BOILBACK_DATA"/scenarios/uncertain-shift-log.csv .
boilback run five-jobs.csv
boilback practise uncertain-shift-log.csv
printf 'time,act\n0:05,water 2 gal\n' >acts.csv
boilback check acts.csv
printf 'name,title\nlength,5\n' >neither.csv
boilback check neither.csv 2>&1 | head -1
{ echo 'title = mass, size, name, minutes'; cat gallons.bath; } | grep -v '= Two' >titled.bath
boilback check titled.bath | head -1
