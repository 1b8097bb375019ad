boilback lesson
boilback lesson calm.bath night.bath cold.bath
boilback lesson - -
boilback lesson calm.bath missing.bath
boilback lesson calm.bath --html calm.bath
boilback lesson calm.bath --html - --json
boilback lesson calm.bath --html missing/page.html >/dev/null
echo before >page.html
(ulimit -S -f 4; trap '' XFSZ; boilback lesson calm.bath --html page.html >/dev/null)
cat page.html
