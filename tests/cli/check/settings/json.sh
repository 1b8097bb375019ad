boilback check night.bath --json
boilback check wrong.bath --json 2>/dev/null
