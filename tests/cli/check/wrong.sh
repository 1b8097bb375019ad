boilback check wrong.bath
