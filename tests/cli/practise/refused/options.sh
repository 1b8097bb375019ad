for speed in 20x 0.5 301x fast x; do
    echo back | boilback practise calm.bath --lines --speed $speed 2>&1 | sed -n '/speed/p'
done
boilback practise - </dev/null
boilback practise - --script - </dev/null
boilback practise calm.bath --script calm.bath --save calm.bath
boilback practise calm.bath --script missing.txt
boilback practise calm.bath --script /dev/null --save missing/kept.bath
