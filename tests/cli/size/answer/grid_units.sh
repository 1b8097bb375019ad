# A number without a unit, and one whose unit is long: values stand in the columns, units in the first line.
boilback size trough.bath --load '20 lb' --table --down 'losses evaporation factor = 0.5 to 1.5 : 2' --across 'room draught = 0.1 m/s to 0.5 m/s : 2' | sed -n 1,8p
boilback size trough.bath --load '20 lb' --table --down 'tank level = 18 in to 20 in : 2' --across 'tank width = 24 in to 28 in : 2' --units si | sed -n 1,8p
