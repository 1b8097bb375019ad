# same_text.sh -- sourced by tests: does a text agree with the one that is kept? Where the program was built by the compiler that
# wrote what is kept (tests/cli/written_by; BUILT_BY says who built this one, unset: the same), byte for byte; elsewhere
# close.awk allows for last digits. Shows the difference otherwise.
here=$(cd "$(dirname "$0")" && pwd)

same_text() { # expected, got
    cmp -s "$1" "$2" && return 0
    if [ -n "$BUILT_BY" ] && [ "$BUILT_BY" != "$(cat "$here/cli/written_by")" ] && awk -f "$here/close.awk" "$1" "$2" >/dev/null; then
        return 0
    fi
    diff -u "$1" "$2"
    return 1
}
