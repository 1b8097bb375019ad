# That gnuplot is missing is said before anything is worked out: here, before the scenario is found wrong.
mkdir bin && ln -s "$(command -v boilback)" bin/boilback && ln -s "$(command -v sed)" bin/sed
PATH=$PWD/bin boilback size wrong_mark.bath --plot out.svg 2>&1 | sed -n 1,2p
