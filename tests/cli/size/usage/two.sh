boilback size trough.bath --table --interval
