# A page to look back on: the shift as it was worked, beside it with each bad act done with care, or alone where none was bad. It is
# written over nothing that is read.
told() { # what happens in each run of a page, and what came of it
    sed -n -e 's/.*<title>\(.*\)<\/title>.*/\1/p' -e 's/.*"title":\("[^"]*"\),"outcome":\("[^"]*"\).*/\1 \2/p' \
        -e 's/^\(\[[0-9.]*,"[^"]*"\),[01]\]*,*$/\1/p' page.html
}
lesson=$(ls "$BOILBACK_DATA"/scenarios/lessons/*water-while-it-boils.bath)
cat >orders <<'END_OF_ORDERS'
0:05:20 water 2 gal over 1 min, at 60 degF
END_OF_ORDERS
boilback practise "$lesson" --script orders --html page.html --save worked.bath | sed -n '/Not passed/,/^$/p'
told
boilback practise "$lesson" --script - --html page.html >/dev/null <<'END_OF_ORDERS'
0:05:30 when boiling for 1 min water 2 gal over 4 min, at 60 degF
END_OF_ORDERS
told
echo 'salts 30 lb over 20 s' | boilback practise gallons.bath --script - --html page.html --units si >/dev/null
told | grep -v '"The boil'
boilback practise gallons.bath --script orders --html orders
boilback practise gallons.bath --script orders --html gallons.bath
boilback practise gallons.bath --script orders --html -
boilback practise gallons.bath --script orders --html out.html --save out.html
boilback practise gallons.bath --script none --html out.html
boilback practise gallons.bath --script orders --html none/out.html
ls | grep -v "bath$"
