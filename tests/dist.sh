#!/bin/sh
# dist.sh -- the source tarball holds what the last commit holds, comes out the same wherever it is made, and builds
# by itself. The last line is "N passed, N failed, N skipped".
. "$(dirname "$0")/expect.sh"

make_dist() { # folder with sources, folder for the result
    "${MAKE:-make}" --no-print-directory -C "$1" BUILD="$2" dist
}

# Where git cannot be asked and there is no list, all that is there, without what was built.
sources() {
    if [ -e .git ] && git ls-tree -r --name-only HEAD 2>/dev/null; then
        echo FILES
    elif [ -e FILES ]; then
        cat FILES
    else
        find . -type f -not -path "./build/*" -not -path "./.git/*" -not -path ./.git
        echo FILES
    fi | sed 's,^\./,,' | LC_ALL=C sort
}

same_files() {
    sources >"$work/expected"
    (cd "$tree" && find . -type f | sed 's,^\./,,' | LC_ALL=C sort) | diff "$work/expected" -
}

builds() {
    "${MAKE:-make}" --no-print-directory -j2 -C "$tree" BUILD=build CFLAGS=-O0 stage
}

makes() { # the program that was built there answers
    [ "$(cd / && "$tree/build/boilback" --version | head -1)" = "boilback $version" ] &&
        (cd "$tree" && build/boilback run scenarios/normal-shift.bath)
}

expect "make dist" make_dist . "$work/out"
tarball=$(echo "$work"/out/boilback-*.tar.gz)
version=$(basename "$tarball" .tar.gz | sed 's/^boilback-//')
expect "the tarball can be unpacked" tar -xzf "$tarball" -C "$work"
tree=$work/boilback-$version
expect "the version is that of the header" grep -q "^#define BOIL_VERSION_TEXT \"$version\"\$" model/boilback.h
expect "it holds the sources, all of them, and nothing else" same_files
sleep 1 # a clock in it would show
expect "make dist from the tarball" make_dist "$tree" "$work/again"
expect "it comes out the same" cmp "$tarball" "$work/again/boilback-$version.tar.gz"
: >"$tree/left-over"
expect "make dist beside a stray file" make_dist "$tree" "$work/third"
expect "a stray file stays out" cmp "$tarball" "$work/third/boilback-$version.tar.gz"
expect "it builds by itself" builds
expect "what was built runs" makes

finish
