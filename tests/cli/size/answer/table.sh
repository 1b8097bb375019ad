boilback size trough.bath --table
