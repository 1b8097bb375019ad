boilback explore water.bath --grid 'bath salt fraction = 0 % to 2 %: 3'
