# expect.sh -- sourced by tests: count what succeeds, fails and is skipped; $work is a folder of their own.
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0
skipped=0

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

skip() { # what, and why
    echo "SKIPPED: $1"
    skipped=$((skipped + 1))
}

expect_with() { # program, what, command...: skipped where the program is not installed
    needed=$1
    shift
    if command -v "$needed" >/dev/null 2>&1; then expect "$@"; else skip "$1 (no $needed)"; fi
}

finish() { # the last line of a test
    echo "$passed passed, $failed failed, $skipped skipped"
    [ $failed -eq 0 ]
}
