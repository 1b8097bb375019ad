boilback check takes.bath
