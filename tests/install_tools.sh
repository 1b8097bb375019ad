#!/bin/sh
# install_tools.sh CC HEADERS PACKAGES -- make sure that a C compiler and the headers are there, installing Debian packages if
# this account may; says plainly what is missing if not.
cc=$1 headers=$2 packages=$3

missing() {
    command -v "$cc" >/dev/null 2>&1 || return 0
    for header in $headers; do
        printf '#include <stdarg.h>\n#include <stddef.h>\n#include <stdint.h>\n#include <setjmp.h>\n#include <%s>\n' "$header" |
            "$cc" -E - >/dev/null 2>&1 || return 0
    done
    return 1
}

missing || exit 0
if command -v apt-get >/dev/null 2>&1; then
    as_root=
    [ "$(id -u)" -eq 0 ] || as_root='sudo -n'
    if [ -z "$as_root" ] || sudo -n true 2>/dev/null; then
        echo "installing $packages" >&2
        DEBIAN_FRONTEND=noninteractive
        export DEBIAN_FRONTEND
        # shellcheck disable=SC2086 # lists of words
        { $as_root apt-get update -q && $as_root apt-get install -q -y $packages; } >&2
    fi
fi
missing || exit 0
echo "boilback needs a C compiler ($cc) and the headers $headers." >&2
echo "On Debian, as root: apt-get install -y $packages" >&2
exit 1
