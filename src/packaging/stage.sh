#!/bin/sh
# stage.sh BUILD VERSION -- lay out in BUILD/stage exactly what an installation holds below its prefix.
set -eu
build=$1 version=$2
stage=$build/stage
rm -rf "$stage"

put() { # mode folder file...
    mode=$1 folder=$stage/$2
    shift 2
    mkdir -p "$folder"
    for file in "$@"; do
        if [ -f "$file" ]; then install -m "$mode" "$file" "$folder"; fi
    done
}

documents() {
    "$build/src/manual/write" | while IFS= read -r place; do
        mkdir -p "$(dirname "$stage/share/$place")"
        "$build/src/manual/write" "$place" >"$stage/share/$place"
    done
}

# One header for all rooms. They include each other by plain name, each from its own folder.
umbrella() {
    printf '/* boilback.h -- the model of an open tank of boiling caustic salt solution, all its rooms. SI units. */\n'
    printf '#ifndef BOILBACK_H\n#define BOILBACK_H\n\n#define BOILBACK_VERSION "%s"\n\n' "$version"
    find model -name "*.h" | LC_ALL=C sort | sed 's,^model/\(.*\),#include "boilback/\1",'
    printf '\n#endif\n'
}

# Relative to its own place, so that a prefix may be moved.
pkgconfig() {
    # shellcheck disable=SC2016 # pkg-config expands these
    printf '%s\n' 'prefix=${pcfiledir}/../..' 'includedir=${prefix}/include' 'libdir=${prefix}/lib' '' \
        'Name: boilback' \
        'Description: the boil of an open tank of caustic salt solution when steel, water or heat goes in or out' \
        "Version: $version" 'Requires: gsl' 'Cflags: -I${includedir} -I${includedir}/boilback' 'Libs: -L${libdir} -lboilback -lm'
}

put 755 bin "$build/boilback"
put 644 lib "$build/libboilback.a"
for folder in model/*/; do put 644 "include/boilback/$(basename "$folder")" "$folder"*.h; done
put 644 share/boilback/scenarios scenarios/*
put 644 share/boilback/plots plots/*.gp
put 644 share/doc/boilback README.md
documents
umbrella >"$stage/include/boilback.h"
mkdir -p "$stage/lib/pkgconfig"
pkgconfig >"$stage/lib/pkgconfig/boilback.pc"
