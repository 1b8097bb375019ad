#!/bin/sh
# readme.sh [--write] -- run every command of README.md's console blocks, in a folder of its own, and compare with the output that
# stands below it there, and the pictures it draws with those in plots/; with --write, put the real ones there. A command is a line
# that begins with "$ "; its output runs to the next one or to the end of the block. Pictures need gnuplot, and are compared
# with the version they were drawn with.
write=no
[ "$1" = --write ] && write=yes
top=$PWD
place=$(mktemp -d) || exit 2
trap 'rm -rf "$place"' EXIT
new=$place/new
mkdir "$place/plots" && ln -s "$top/build" "$top/scenarios" "$place"
can_draw=no
command -v gnuplot >/dev/null 2>&1 && can_draw=yes

carry_out() {
    command=$1
    [ $can_draw = yes ] || command=$(printf '%s\n' "$command" | sed 's/ --plot [^ ]*//')
    (cd "$place" && sh -c "$command" </dev/null 2>&1)
}

inside=no
while IFS= read -r line || [ -n "$line" ]; do
    case $inside:$line in
    no:'```console') inside=yes; printf '%s\n' "$line" >>"$new" ;;
    yes:'```') inside=no; printf '%s\n' "$line" >>"$new" ;;
    'yes:$ '*) { printf '%s\n' "$line"; carry_out "${line#??}"; } >>"$new" ;;
    yes:*) ;; # old output
    *) printf '%s\n' "$line" >>"$new" ;;
    esac
done <README.md

drawn_by() {
    grep -m 1 -o 'Produced by [^<]*' "$1"
}

status=0
for picture in "$place"/plots/*.svg; do
    [ -e "$picture" ] || continue
    kept=plots/${picture##*/}
    if [ $write = yes ]; then
        cp "$picture" "$kept"
    elif [ "$(drawn_by "$picture")" = "$(drawn_by "$kept")" ] && ! cmp "$picture" "$kept"; then
        status=1
    fi
done
if [ $write = yes ]; then
    cat "$new" >README.md
elif ! diff -u README.md "$new"; then
    status=1
fi
[ $status = 0 ] || echo "README.md: a command gives something else than what stands there; tests/readme.sh --write puts it right" >&2
exit $status
