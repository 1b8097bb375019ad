boilback check night.bath --json | grep -v version
boilback check wrong.bath --json 2>/dev/null
