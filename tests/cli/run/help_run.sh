boilback run --help
