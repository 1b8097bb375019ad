boilback correct --help
