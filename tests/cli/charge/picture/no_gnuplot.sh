mkdir bin && ln -s "$(command -v boilback)" bin/boilback
PATH=$PWD/bin boilback charge calm.bath --plot out.svg >report
status=$?
head -1 report | cut -c1-15
PATH=$PWD/bin boilback charge calm.bath --plot - | head -1 | cut -c1-15
ls | grep -v bath
exit $status
