# The heaviest of the loads, not the first of them.
sed 's/^every 30 min from 0:05.*/0:05 load 20 lb, plate 1\/4 in, for 20 min\n0:45 load 60 lb, plate 1\/4 in, for 20 min/' calm.bath >two.bath
boilback size two.bath --heaviest --json | sed -n '/"times"/p; /"heaviest_kg"/p' | sed 's/\([1-9][0-9.]\{4\}\)[0-9.]*/\1/'
boilback size two.bath --heaviest | sed -n 1,2p
