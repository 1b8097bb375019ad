# A page a lesson and a page that leads to them; nothing where one of them is none.
cp "$BOILBACK_DATA"/scenarios/lessons/*water-while-it-boils.bath 'a lesson & more.bath'
boilback lesson 'a lesson & more.bath' --all deck
ls deck
grep -o '<a href="[^"]*">[^<]*' deck/index.html
boilback lesson 'a lesson & more.bath' calm.bath --all other
ls other 2>/dev/null || echo 'no folder'
boilback lesson 'a lesson & more.bath' './a lesson & more.bath' --all other
cp 'a lesson & more.bath' index.bath
boilback lesson index.bath --all other
boilback lesson calm.bath --all other --html page.html
boilback lesson 'a lesson & more.bath' --all calm.bath
boilback lesson - --all other
boilback lesson --all other
