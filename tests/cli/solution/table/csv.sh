boilback solution --salts '100 % NaOH' --table --from '40 %' --to '50 %' --step '5 %' --csv - | sed 's/\([1-9][0-9.]\{5\}\)[0-9.]*/\1/g'
