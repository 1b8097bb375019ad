mkdir bin && ln -s "$(command -v boilback)" bin/boilback
PATH=$PWD/bin boilback size calm.bath --plot out.svg >report
status=$?
head -1 report
ls | grep -v bath
exit $status
