boilback size trough.bath --positions 3
