# A scenario with a mistake is told as everywhere.
boilback practise wrong.bath --script /dev/null 2>&1 | head -4
boilback practise none.bath
