boilback explore uncertain.bath --json --plot -
boilback explore uncertain.bath --csv - --plot -
boilback explore uncertain.bath --csv - --json
boilback explore uncertain.bath --shard 1/2 --plot out.svg
boilback explore uncertain.bath --shard 3/2
boilback explore uncertain.bath --plot out.gif
boilback explore uncertain.bath --grid "heat efficiency = 50 % to 70 % : 3"
boilback explore calm.bath
