boilback run
