boilback run shift.bath | head -54
