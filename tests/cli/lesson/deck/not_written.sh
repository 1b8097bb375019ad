# Where a page of a deck, or the page that leads to them, cannot be written; and what it is never written over.
cat >short.bath <<'END'
title = Short
duration = 1 min
[lesson]
goal = Wait
question = For what?
pass = quiet <= 60 s
[tank]
length = 5 ft
width = 2 ft
depth = 24.5 in
level = 16 in
[bath]
salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2
boiling point = 285 degF
[heat]
input = 190 kBtu/h
[careful]
[reckless]
0:00:10 water 1 gal over 5 s
END
tell() {
    boilback lesson "$@"
    echo "exit $?"
}
tell short.bath --all short.bath/deck
mkdir -p page/short.html index/index.html
tell short.bath --all page
tell short.bath --all index
cp short.bath short.html
tell short.html --all .
cmp short.html short.bath && echo it is as it was
mkdir links
ln -s ../other.bath links/short.html
cp short.bath other.bath
tell short.bath other.bath --all links
tell short.bath missing.bath --all deck
tell short.bath --all deck --json
cp short.bath .hidden
cp short.bath plain
tell .hidden plain other.bath short.bath other.bath --all deck
tell .hidden plain --all deck
ls -A deck
