# The places set the interval: one of them, and three.
for places in 1 3; do
    boilback size calm.bath --interval --load '60 lb' --positions $places | sed -n '1,2p; / places*,/,/^$/p'
done
boilback size calm.bath --interval --load '60 lb' --positions 41
