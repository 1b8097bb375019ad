# A tank with some room: how much lighter the load, or how much wider the tank, that opens the window; 72 of 80 lb are 90 %.
sed 's/^depth .*/depth = 39 in/' brimful.bath >higher.bath
boilback size higher.bath --load "80 lb" | sed -n '/^What would open/,/^$/p'
