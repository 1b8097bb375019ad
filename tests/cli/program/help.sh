boilback --help
