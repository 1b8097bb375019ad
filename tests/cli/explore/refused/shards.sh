for shard in 1 0/4 5/4 -1/4 1/-4 1/ /4 1/4x 1/100001 one/two; do
    boilback explore uncertain.bath --samples 4 --shard $shard --csv -
done
boilback explore uncertain.bath --samples 4 --shard 1/4 --csv out.csv --json
