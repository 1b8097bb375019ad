# Orders that end in the middle of a line: what stands there is read as it is. Nothing at all: the shift goes by.
printf '0:05 water 1 gal over 4 min\nwait 3 mi' | boilback practise gallons.bath --script - | sed '/is over/q'
boilback practise gallons.bath --script - </dev/null | sed '/is over/q'
printf 'wait 2 min\nquit\nwait 2 min\n' | boilback practise gallons.bath --script -
