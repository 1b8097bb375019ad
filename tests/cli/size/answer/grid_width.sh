boilback size trough.bath --load '20 lb' --table --down 'tank level = 20 in to 22 in : 2' --across 'tank width = 24 in to 28 in : 2' --same-volume --csv -
