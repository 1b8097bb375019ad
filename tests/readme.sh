#!/bin/sh
# readme.sh [--write] -- run every command of README.md's console blocks and compare with the output that stands below it there;
# with --write, put the real output there. A command is a line that begins with "$ "; its output runs to the next one or to
# the end of the block.
write=no
[ "$1" = --write ] && write=yes
new=$(mktemp) && part=$(mktemp) || exit 2
trap 'rm -f "$new" "$part"' EXIT
inside=no
while IFS= read -r line || [ -n "$line" ]; do
    case $inside:$line in
    no:'```console') inside=yes; printf '%s\n' "$line" >>"$new" ;;
    yes:'```') inside=no; printf '%s\n' "$line" >>"$new" ;;
    'yes:$ '*)
        printf '%s\n' "$line" >>"$new"
        sh -c "${line#??}" </dev/null >"$part" 2>&1
        cat "$part" >>"$new"
        ;;
    yes:*) ;; # old output
    *) printf '%s\n' "$line" >>"$new" ;;
    esac
done <README.md
if [ "$write" = yes ]; then
    cat "$new" >README.md
elif ! diff -u README.md "$new"; then
    echo "README.md: a command prints something else than what stands there; tests/readme.sh --write puts it right" >&2
    exit 1
fi
