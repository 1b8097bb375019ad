# Of runs that all left what is known of such baths there is no number, and none of them says that a boil never came back.
boilback explore uncertain.bath --samples 4 --shard 1/8 >rows.csv
awk -F, 'BEGIN { OFS = FS } NR > 1 { $6 = 0 } { print }' rows.csv >gone.csv
boilback explore --merge gone.csv | sed -n '/left what is known/p; /^Of the draws/,/^$/p'
