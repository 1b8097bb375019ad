# What was made before the signal is reported and kept.
boilback explore uncertain.bath --samples 20000 --csv rows.csv >report.txt 2>errors.txt &
job=$!
sleep 1
kill -INT $job
wait $job
echo "exit $?"
sed "s/after [0-9]* of/after N of/" errors.txt
grep -c "not all were made" report.txt
boilback explore --merge rows.csv >again.txt && cmp report.txt again.txt && echo "the same"
