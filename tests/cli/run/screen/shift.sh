boilback run shift.bath
