mkdir bin && ln -s "$(command -v boilback)" bin/boilback
PATH=$PWD/bin boilback compare calm.bath night.bath --plot pair.svg >report
status=$?
head -1 report
ls | grep -v bath
exit $status
