boilback size trough.bath --load '1 degF'
