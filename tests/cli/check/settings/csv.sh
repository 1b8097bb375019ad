boilback check coil.bath --csv settings.csv | head -1
cat settings.csv
boilback check coil.bath --csv - --json
