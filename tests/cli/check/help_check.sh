boilback check -h
