boilback solution --salts '100 % NaOH' --table --from '5 lb/gal' --to '6 lb/gal' --step '1 lb/gal' --json | sed 's/\([1-9][0-9.]\{5\}\)[0-9.]*/\1/'
