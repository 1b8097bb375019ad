boilback lesson calm.bath --json | grep -v version | head -20
