boilback solution --help
