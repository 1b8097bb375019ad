# Settings that lack a number, a unit, a word or an end, each in a scenario that is well otherwise.
try() { # section, line
    sed -e '/^.limits/,$d' -e '/^.heat/i \
[limits]\
[measures]\
[breaks]' calm.bath | sed "/^.$1/a $2" >half.bath
    boilback check half.bath 2>&1 >report.txt | sed -n '1s/^boilback: half.bath:[0-9]*:[0-9]*: //p'
}
for range in '280 degF' '280 degF to hot' 'hot to 290 degF' '280 degF to 290 degF or so' '290 degF to 280 degF' \
    '100 degF to 290 degF' '280 degF to 900 degF'; do
    try limits "boiling point = $range"
done
for measure in 'bag' 'bag = 50 psia' 'bag = 50 lb of salt' 'keg = 5000 gal' 'keg = 5 gal again'; do
    try measures "$measure"
done
for span in '0:10' 'soon to 0:15' '0:10 to soon' '0:15 to 0:10' '0:10 to 5:00' '5:00 to 6:00'; do
    try breaks "$span"
done
for afloat in '5 psia' '5 lb at hot' '5 lb at 300 degF' '5 lb at 60 degF now' '99999 lb'; do
    try bath "water afloat = $afloat"
done
