# A plan that somebody changed: no word of it is believed that cannot be so.
boilback explore uncertain.bath --samples 4 --shard 1/32 --csv - >a.csv
wrong() { # command of sed
    sed "$1" a.csv >broken.csv
    cmp -s a.csv broken.csv && echo "nothing is broken by $1"
    boilback explore --merge broken.csv 2>&1 | head -1
}
wrong 's/version = [0-9.]*/version = 9.9/'
wrong 's/plan = 1 8 1/plan = 1 8/'
wrong 's/plan = 1 8 1/plan = 1 8 4294967296/'
wrong 's/plan = 1 8 1/plan = 0 8 1/'
wrong 's/is = 19 0 0.5/is = 19 0/'
wrong 's/is = 19 0/is = 99 0/'
wrong 's/is = 19 0/is = -1 0/'
wrong 's/is = 19 0/is = 19 99/'
wrong 's/is = 19 0/is = 19 -1/'
wrong 's/0.5 0.70*7 0 0 0/0.9 0.7 0 0 0/'
wrong 's/load = 300 /load = x /'
wrong 's/load = 300 load/load = 300/; s/load = 300 80.*"/load = 300"/'
wrong 's/start_s = /begin_s = /'
wrong 's/title = /title: /'
wrong 's/input = heat efficiency; said/said/'
wrong 's/; load = 300/; steps = 0; load = 300/'
wrong 's/; load = 300/; steps = x; load = 300/'
wrong 's/; load = 300/; grid = heat input; said = a to b; is = 1 0 2 1 0 0 0; steps = 3; load = 300/'
wrong 's/input = heat efficiency/grid = heat efficiency/'
wrong '2s/"version.*//'
wrong '2s/^0,/x,/'
wrong '2s/^0,/9999999,/'
wrong '2s/^0,/99999999999999999999999,/'
wrong '1s/loads_back_share/loads_back/'
wrong '1s/,study$//'
wrong '2,$d'
wrong '2s/"$/; /'
sed -n 2p a.csv >>a.csv
boilback explore --merge a.csv a.csv | sed -n 1p
