boilback --version | sed "1s/ [0-9].*/ N/"
