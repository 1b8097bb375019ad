boilback check wrong_hangs.bath
