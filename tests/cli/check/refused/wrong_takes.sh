boilback check wrong_takes.bath
