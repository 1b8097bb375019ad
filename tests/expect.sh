# expect.sh -- sourced by tests: count what succeeds and what fails, in $passed and $failed; $work is a folder of their own.
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

expect() { # what, command...: the command succeeds; what it says is shown when it does not
    what=$1
    shift
    if "$@" >"$work/log" 2>&1; then
        passed=$((passed + 1))
    else
        echo "FAILED: $what"
        cat "$work/log"
        failed=$((failed + 1))
    fi
}
