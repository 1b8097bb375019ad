boilback check coil.bath --csv settings.csv | sed -n 1p
cat settings.csv
boilback check coil.bath --csv - --json
