mkdir bin && ln -s "$(command -v boilback)" bin/boilback
PATH=$PWD/bin boilback charge calm.bath --plot out.svg >report
status=$?
head -1 report
PATH=$PWD/bin boilback charge calm.bath --plot - | head -1
ls | grep -v bath
exit $status
