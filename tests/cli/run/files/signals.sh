# What is unfinished goes before the program does, whichever signal ends it; no picture waits for ever.
mkdir bin tmp
printf '#!/bin/sh\necho $$ >"%s/started"\nsleep 100 &\nsleep 100\n' "$PWD" >bin/gnuplot
chmod +x bin/gnuplot
PATH=$PWD/bin:$PATH
TMPDIR=$PWD/tmp
export PATH TMPDIR
for signal in HUP INT TERM; do
    rm -f started
    # A shell lets what runs beside it ignore interrupts, and whoever started all this may ignore others; what env starts does not.
    env --default-signal=HUP,INT,TERM boilback run calm.bath --plot a.svg >/dev/null 2>said &
    program=$!
    # Before that it is the shell that would be ended, or not at all: however slow the machine is.
    for wait in $(seq 240); do [ -s started ] || sleep 0.25; done
    kill -$signal $program
    { wait $program; } 2>/dev/null
    echo "$signal: exit $?" && cat said && ls tmp
    kill -0 "$(cat started)" 2>/dev/null && echo "gnuplot is still there"
done
ls | grep -v bath
