boilback check wrong_waits.bath
