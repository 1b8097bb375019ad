# A script of what is no lesson, and an answer that is not there.
boilback run calm.bath --script careful
cp "$BOILBACK_DATA"/scenarios/lessons/02-*.bath lesson.bath
boilback run lesson.bath --script choice-4
boilback run lesson.bath --script carefully
