boilback check wrong_lesson.bath
