boilback check wrong_uncertain.bath
