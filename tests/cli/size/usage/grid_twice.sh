boilback size trough.bath --table --down 'tank level = 14 in to 22 in : 2' --across 'tank level = 16 in to 20 in : 2'
