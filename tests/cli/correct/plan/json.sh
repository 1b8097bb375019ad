boilback correct calm.bath --reads '288 degF +- 1 degF' --level '25 in' --json | sed 's/\([1-9][0-9.]\{3\}\)[0-9.e+-]*/\1/'
