# It stands in for the report; in other units.
mkdir bin && ln -s "$(command -v boilback)" bin/boilback && for t in head grep tail; do ln -s "$(command -v $t)" bin/$t; done
PATH=$PWD/bin
boilback run calm.bath --html - --units si 2>/dev/null >page
head -1 page
grep -c 'degF' page
grep -o '<strong>NOTHING ABOVE NOTICE' page
tail -1 page
