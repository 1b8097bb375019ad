boilback size trough.bath --sheet --json | sed 's/\([1-9][0-9.]\{4\}\)[0-9.]*/\1/'
