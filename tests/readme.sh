#!/bin/sh
# readme.sh [--write] -- run every command of the console blocks of README.md, of the guide and of the limits, in a folder of its own, and compare with the output that
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
texts="README.md src/manual/guide.md src/manual/limits.md"
mkdir "$place/plots" && ln -s "$top/build" "$top/scenarios" "$place"
can_draw=no
command -v gnuplot >/dev/null 2>&1 && can_draw=yes

carry_out() {
    command=$1
    [ $can_draw = yes ] || command=$(printf '%s\n' "$command" | sed 's/ --plot [^ ]*//')
    (cd "$place" && sh -c "$command" </dev/null 2>&1)
}

with_output() { # text: prints it with what its commands print now
    inside=no
    while IFS= read -r line || [ -n "$line" ]; do
        case $inside:$line in
        no:'```console') inside=yes; printf '%s\n' "$line" ;;
        yes:'```') inside=no; printf '%s\n' "$line" ;;
        'yes:$ '*) printf '%s\n' "$line"; carry_out "${line#??}" ;;
        yes:*) ;; # old output
        *) printf '%s\n' "$line" ;;
        esac
    done <"$1"
}

for text in $texts; do with_output "$text" >"$place/${text##*/}"; done

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
for text in $texts; do
    if [ $write = yes ]; then
        cat "$place/${text##*/}" >"$text"
    elif same_text "$text" "$place/${text##*/}"; then
        passed=$((passed + 1))
    else
        echo "$text: a command gives something else than what stands there; tests/readme.sh --write puts it right" >&2
        failed=$((failed + 1))
    fi
done
echo "$passed passed, $failed failed, $skipped skipped"
[ $failed -eq 0 ]
