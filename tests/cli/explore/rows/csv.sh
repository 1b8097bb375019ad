# Any reader of CSV reads the rows; a share without rows is of the study all the same, and so are rows with the line ends of
# another system; rows without the first one are not.
boilback explore uncertain.bath --samples 16 --csv rows.csv >report.txt
head -1 rows.csv | cut -d, -f1-8
awk -F, 'NR == 1 { cells = NF } /^#/ || (NR > 2 && NF != cells) { print "line " NR ": " NF " cells" }' rows.csv
boilback explore uncertain.bath --samples 16 --shard 900/1000 >empty.csv
wc -l <empty.csv
boilback explore --merge empty.csv rows.csv >again.txt && cmp report.txt again.txt && echo "with an empty share: the same"
sed 's/$/\r/' rows.csv >other.csv
boilback explore --merge other.csv >again.txt && cmp report.txt again.txt && echo "with other line ends: the same"
sed 2d rows.csv >cut.csv
boilback explore --merge cut.csv
