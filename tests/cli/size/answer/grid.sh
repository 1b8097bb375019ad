boilback size trough.bath --load '20 lb' --table --down 'tank level = 14 in to 22 in : 2' --across 'tank length = 48 in to 60 in : 2' --same-volume
boilback size trough.bath --load '20 lb' --table --down 'tank level = 20 in to 40 in : 2' --across 'room draught = 0.1 m/s to 0.5 m/s : 2' --csv -
