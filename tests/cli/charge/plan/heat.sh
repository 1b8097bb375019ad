# Too little heat to boil at all; enough that less than the freeboard is left; enough that it goes over the rim.
for input in 60 900 3000; do
    sed "s,^input .*,input = $input kBtu/h," calm.bath | boilback charge - | sed -n '1,2p; /heat on, full/,/^$/p'
done
