boilback run calm.bath --csv out.csv --step "30 min" >/dev/null && ls && cut -d, -f1-3 out.csv | sed "s/\(\.[0-9][0-9]\)[0-9]*$/\1/"
