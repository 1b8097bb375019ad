mkdir bin && printf '#!/bin/sh\necho "<?xml version=\\"1.0\\"?><svg xmlns=\\"http://www.w3.org/2000/svg\\"></svg>" >"$5"\n' >bin/gnuplot && chmod +x bin/gnuplot
PATH=$PWD/bin:$PATH
boilback run calm.bath --plot missing/out.svg >/dev/null
echo $?
boilback run calm.bath --plot out.svg >/dev/null
echo $?
ls | grep -v bath
