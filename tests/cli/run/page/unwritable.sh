mkdir bin && printf '#!/bin/sh\nexit 1\n' >bin/gnuplot && chmod +x bin/gnuplot
PATH=$PWD/bin:$PATH
boilback run calm.bath --html missing/page.html >/dev/null
echo $?
echo before >page.html
(ulimit -S -f 4; trap '' XFSZ; boilback run calm.bath --html page.html >/dev/null)
echo $?
cat page.html
ls | grep -v bath
