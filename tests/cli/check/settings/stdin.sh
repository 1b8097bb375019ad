boilback check - <cold.bath | head -4
