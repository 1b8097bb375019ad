boilback check night.bath
