boilback check missing.bath
