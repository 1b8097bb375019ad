boilback charge calm.bath --csv steps.csv | sed -n 1p
cat steps.csv
