# What a lesson comes to, and what its scripts prove.
cp "$BOILBACK_DATA"/scenarios/lessons/01-*.bath lesson.bath
boilback check lesson.bath | sed -n "/^What is done/,/^$/p; /^What is asked/,/^$/p"
boilback check lesson.bath | sed -n "/^What the lesson/,/^$/p"
boilback check lesson.bath --json | sed -n "/^  \"lesson\"/,\$p"
