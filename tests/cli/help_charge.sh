boilback charge --help
