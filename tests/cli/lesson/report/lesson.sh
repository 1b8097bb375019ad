# A lesson: recklessly, with care, and by each answer.
cp "$BOILBACK_DATA"/scenarios/lessons/*water-while-it-boils.bath lesson.bath
boilback lesson lesson.bath
