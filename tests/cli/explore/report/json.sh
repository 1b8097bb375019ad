boilback explore uncertain.bath --samples 16 --json | sed "s/: -\{0,1\}[0-9][-+.e0-9]*/: N/" | head -60
