# Each script of a lesson, and each answer to its question.
cp "$BOILBACK_DATA"/scenarios/lessons/01-*.bath lesson.bath
boilback run lesson.bath | sed -n "1,3p; /^ lesson/,/^$/p"
boilback run lesson.bath --script reckless | sed -n "/^ lesson/,/^$/p"
for script in careful reckless idle choice-1 choice-2 choice-3 choice-4; do
    boilback run lesson.bath --script $script --brief
done
