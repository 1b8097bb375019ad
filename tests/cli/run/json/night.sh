boilback run night.bath --json | sed "s/: -\{0,1\}[0-9][-+.e0-9]*/: N/"
