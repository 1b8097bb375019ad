# The lessons that are shipped, wherever the program stands, and how one is begun; who asks for one by its bare name, by its number or
# by that word is told where it is.
boilback practise --lessons >listed
sed '1s/in .*scenarios/in HERE/' listed | head -5
sed -n "/^To/s,'/.*/scenarios,'HERE,p" listed
eval "$(sed -n 's/^To show it: *//p' listed)" | head -2
head -c 15 page.html
told() { boilback "$@" 2>&1 | sed "s,'/.*/scenarios,'HERE,"; }
told practise 01-water-while-it-boils.bath
told lesson 10-monday-morning --html page.html
told run normal-shift
told practise 1
told practise lessons
told practise plan
told practise ./normal-shift.bath
BOILBACK_DATA=/nowhere boilback practise --lessons
