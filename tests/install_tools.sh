#!/bin/sh
# install_tools.sh CC HEADERS PROGRAMS PACKAGES -- make sure that a C compiler, the headers and the programs are there, installing
# Debian packages if this account may. Without the compiler or a header nothing can be built, and what is missing is said;
# without a program the tests that need it are skipped.
cc=$1 headers=$2 programs=$3 packages=$4

# CC is words: a launcher or options may stand beside the compiler's name.
can_build() {
    # shellcheck disable=SC2086
    set -- $cc
    command -v "$1" >/dev/null 2>&1 || return 1
    for header in $headers; do
        printf '#include <stdarg.h>\n#include <stddef.h>\n#include <stdint.h>\n#include <setjmp.h>\n#include <%s>\n' "$header" |
            "$@" -E - >/dev/null 2>&1 || return 1
    done
}

complete() {
    can_build || return 1
    for program in $programs; do
        command -v "$program" >/dev/null 2>&1 || return 1
    done
}

complete && exit 0
if command -v apt-get >/dev/null 2>&1; then
    as_root=
    [ "$(id -u)" -eq 0 ] || as_root='sudo -n'
    if [ -z "$as_root" ] || sudo -n true 2>/dev/null; then
        echo "installing $packages" >&2
        DEBIAN_FRONTEND=noninteractive
        export DEBIAN_FRONTEND
        # shellcheck disable=SC2086 # lists of words
        { $as_root apt-get update -q && $as_root apt-get install -q -y --no-install-recommends $packages; } >&2
    fi
fi
can_build && exit 0
echo "boilback needs a C compiler ($cc) and the headers $headers." >&2
echo "On Debian, as root: apt-get update && apt-get install -y $packages" >&2
exit 1
