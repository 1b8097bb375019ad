boilback size trough.bath --table --down 'tank level = 14 in to 22 in : 2'
boilback size trough.bath --down 'tank level = 14 in to 22 in : 2' --across 'tank length = 48 in to 60 in : 2'
boilback size trough.bath --table --same-volume
boilback size trough.bath --table --down 'tank level = 14 in to 22 in : 20' --across 'tank length = 48 in to 60 in : 2'
boilback size trough.bath --table --down 'tank diameter = 14 in to 22 in : 2' --across 'tank length = 48 in to 60 in : 2'
