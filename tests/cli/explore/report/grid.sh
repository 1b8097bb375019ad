boilback explore uncertain.bath --samples 16 --grid "heat input = 200 kBtu/h to 500 kBtu/h : 4"
boilback explore calm.bath --units si --grid "tank level = 20 in to 30 in : 2" | sed -n "7,12p"
