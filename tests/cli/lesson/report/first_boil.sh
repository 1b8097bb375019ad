# It comes over at its first boil, and ends before that was steady: there is no usual steam to compare with.
sed -e '/^duration/s/=.*/= 48 min/' -e '/^\[lesson\]/,$d' "$BOILBACK_DATA/scenarios/lessons/10-monday-morning.bath" >first.bath
printf '[schedule]\n0:02 water 30 gal over 5 min\n0:06 heat 100 %%\n' >>first.bath
boilback lesson first.bath
