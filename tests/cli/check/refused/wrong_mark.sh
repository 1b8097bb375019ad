boilback check wrong_mark.bath
