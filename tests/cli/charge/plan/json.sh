boilback charge calm.bath --json | sed 's/\([1-9][0-9.]\{3\}\)[0-9.e+-]*/\1/'
