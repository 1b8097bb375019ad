boilback size coil.bath --load '60 lb'
