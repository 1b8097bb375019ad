boilback run calm.bath --html - --plot -
