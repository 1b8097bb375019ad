boilback size --help
