boilback size hooded.bath --interval --load '30 lb'
