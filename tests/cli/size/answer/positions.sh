# With one place the stay sets the interval; with three of them the heat does.
for places in 1 3; do
    boilback size calm.bath --interval --load '60 lb' --positions $places | sed -n '1,2p; / places*,/,/^$/p'
done
boilback size calm.bath --interval --load '60 lb' --positions 41
