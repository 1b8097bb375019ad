boilback size trough.bath --interval --load '60 lb'
