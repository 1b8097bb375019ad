boilback size trough.bath --json | sed 's/\([1-9][0-9.]\{4\}\)[0-9.]*/\1/'
