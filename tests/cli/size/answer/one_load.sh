boilback size trough.bath --recover 2min --load '1 lb per 2 gal'
