# Breaks in any order, two that touch, and one after the last is out: the plan keeps those that it meets, in order, as one.
{
    sed '/^\[jobs\]/,$d' "$BOILBACK_DATA/tests/faults/list.bath"
    printf '[breaks]\n6:20 to 6:30 lunch\n6:02 to 6:12\n6:10 to 6:15\n12:00 to 12:30\n'
    printf '[jobs]\npins 20 lb, bar 1/2 in, for 5 min\nbolts 20 lb, bar 1/2 in, for 5 min\n'
} >breaks.bath
boilback plan breaks.bath --write planned.bath | sed -n '/ break/p'
sed -n '/^\[breaks\]/,/^$/p' planned.bath
boilback check planned.bath >/dev/null && echo "it is read again"
