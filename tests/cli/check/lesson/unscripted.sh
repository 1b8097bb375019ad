# A shift that was worked on a lesson: its schedule is judged; and it has no script to carry out.
cp "$BOILBACK_DATA"/scenarios/lessons/01-*.bath lesson.bath
sed '/^\[careful\]/,$d' lesson.bath >worked.bath
boilback check worked.bath | sed -n '/^A lesson without/,/^$/p'
boilback check worked.bath --json | sed -n '/^  "lesson"/,/^  }/p'
boilback run worked.bath --brief
boilback run worked.bath --script careful
