boilback --version | sed "s/ [0-9].*/ N/"
