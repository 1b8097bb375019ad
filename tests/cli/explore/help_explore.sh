boilback explore --help
