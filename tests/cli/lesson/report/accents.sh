# An answer is as wide as its characters, not its bytes: nothing stands before its colon, and no line is over 79 columns.
sed 's/^choice Pour them now, in a minute =/choice Größere Güsse, sofort hineingeschüttet =/' \
    "$BOILBACK_DATA"/scenarios/lessons/*water-while-it-boils.bath >lesson.bath
boilback lesson lesson.bath | sed -n '/^Gr/,/^Pour/p'
