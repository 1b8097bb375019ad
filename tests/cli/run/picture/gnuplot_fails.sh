mkdir bin && printf '#!/bin/sh\necho "half of it" >"$5"\necho "no terminal of that name" >&2\nexit 1\n' >bin/gnuplot && chmod +x bin/gnuplot
PATH=$PWD/bin:$PATH boilback run calm.bath --plot out.svg | head -1
PATH=$PWD/bin:$PATH boilback run calm.bath --plot - >/dev/null
echo $?
ls | grep -v bath
