# Careful and reckless changed for each other, a wait in vain, and a lesson that anybody passes.
cp "$BOILBACK_DATA"/scenarios/lessons/01-*.bath lesson.bath
sed "s/^\[careful\]/[-]/; s/^\[reckless\]/[careful]/; s/^\[-\]/[reckless]/" lesson.bath >changed.bath
boilback check changed.bath | sed -n "/^What the lesson/,/^$/p"
sed "s/^0:06 when boiling for 1 min/0:06 when boiling for 1 h/" lesson.bath >in_vain.bath
boilback check in_vain.bath | sed -n "/^What the lesson/,/^$/p"
sed "/^pass *= [was]/d; s/rim >= 6 in/rim >= 0/; /water-on-quiet/d; s/^0:05:20 water/0:20 water/" lesson.bath >easy.bath
boilback check easy.bath >easy.out
echo $?
