# What a lesson's own schedule says happens in any case; at the end it says what held and what did not. Orders are its scripts.
lessons=$BOILBACK_DATA/scenarios/lessons
work() { # lesson script
    sed -n "/^\[$2\]/,/^\[/p" "$lessons/$1" | grep -v '^\[' | boilback practise "$lessons/$1" --script - | sed '/^What was done/,$d'
}
work 01-water-while-it-boils.bath careful
work 01-water-while-it-boils.bath reckless
work 06-creeping-level.bath careful
echo | boilback practise "$lessons/10-monday-morning.bath" --script - | grep -A5 passed:
boilback practise "$lessons/01-water-while-it-boils.bath" --script - --save worked.bath <<'END' >/dev/null
0:06 when boiling for 1 min water 2 gal over 4 min, at 60 degF
END
sed -n '/in any case/,/reckless/p' worked.bath
boilback run worked.bath --brief
