for n in 1 2 4; do
    boilback explore uncertain.bath --samples 32 --threads $n --csv rows.$n.csv >report.$n.txt
    boilback explore uncertain.bath --samples 32 --threads $n --json >report.$n.json
done
for i in 1 2 3 4 5 6 7; do
    boilback explore uncertain.bath --samples 32 --threads 1 --shard $i/7 >shard.$i.csv
done
boilback explore --merge shard.*.csv --csv rows.m.csv >report.m.txt
boilback explore --merge shard.*.csv --json >report.m.json
for n in 2 4 m; do
    cmp rows.1.csv rows.$n.csv && cmp report.1.txt report.$n.txt && cmp report.1.json report.$n.json && echo "$n: the same"
done
boilback explore --merge shard.1.csv shard.3.csv | grep "not all"
