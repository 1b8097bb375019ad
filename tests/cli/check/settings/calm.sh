boilback check calm.bath
