#!/bin/sh
# readme.sh [--write] -- run every command of README.md's console blocks, in a folder of its own, and compare with the output that
# stands below it there, and the pictures it draws with those in plots/; with --write, put the real ones there. A command is a line
# that begins with "$ "; its output runs to the next one or to the end of the block. Pictures need gnuplot, and are compared
# with the version they were drawn with; same_text.sh says what
# the same is. The last line is "N passed, N failed, N skipped".
write=no
[ "$1" = --write ] && write=yes
top=$PWD
. tests/same_text.sh
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

passed=0
failed=0
skipped=0
skip() {
    echo "SKIPPED: $1"
    skipped=$((skipped + 1))
}

[ $can_draw = yes ] || skip "pictures of README.md (no gnuplot)"
for picture in "$place"/plots/*.svg; do
    [ -e "$picture" ] || continue
    kept=plots/${picture##*/}
    if [ $write = yes ]; then
        cp "$picture" "$kept"
    elif [ "$(drawn_by "$picture")" != "$(drawn_by "$kept")" ]; then
        skip "$kept (drawn by another version of gnuplot)"
    elif same_text "$kept" "$picture" >/dev/null; then
        passed=$((passed + 1))
    else
        echo "$kept is drawn otherwise"
        failed=$((failed + 1))
    fi
done
if [ $write = yes ]; then
    cat "$new" >README.md
elif same_text README.md "$new"; then
    passed=$((passed + 1))
else
    failed=$((failed + 1))
fi
[ $failed -eq 0 ] || echo "README.md: a command gives something else than what stands there; tests/readme.sh --write puts it right" >&2
echo "$passed passed, $failed failed, $skipped skipped"
[ $failed -eq 0 ]
