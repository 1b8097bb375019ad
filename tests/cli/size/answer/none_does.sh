# What no heat does, and why: it boils over, leaves too little freeboard, or the water does not hold the strength.
sed 's/^level .*/level = 39 in/' calm.bath >full.bath
boilback size full.bath | sed -n 1,2p
boilback size full.bath --heaviest | sed -n '1,2p; /lightest:/,/\.$/p'
boilback size calm.bath --recover '1 s' | sed -n 1,2p
boilback size trough.bath --load '2000 lb' | sed -n 1,2p
{
    sed '/water/d; s/duration = 2 h/duration = 12 h/; s/to 1:35/to 11:35/' calm.bath
    printf '\n[water control]\nmode = on/off\nset point = 285.5 degF\nrate = 10 gal/h\n'
} | boilback size - | sed -n 1,2p
sed 's/^input .*/input = 60 kBtu\/h/' calm.bath | boilback size - --heaviest | sed -n '/lightest:/,/\.$/p'
for load in 300 400; do
    boilback size trough.bath --interval --load "$load lb" --recover '1 min' | sed -n '/apart:/,/\.$/p'
done
