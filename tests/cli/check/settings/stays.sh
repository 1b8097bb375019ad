boilback check stays.bath
