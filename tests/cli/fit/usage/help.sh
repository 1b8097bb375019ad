boilback fit --help
