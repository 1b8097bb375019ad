# Gas for 1.20 a therm, and so on: each amount of the account times its price, per load and per 100 lb as well.
boilback run words.bath --full 2>/dev/null | grep -E "cost|fuel|water by hand|salts| break:"
boilback run words.bath --json 2>/dev/null | grep -A 10 '"costs"'
boilback run words.bath --html - 2>/dev/null | grep -A 4 "break coffee"
boilback run calm.bath --json 2>/dev/null | grep -A 10 '"costs"'
