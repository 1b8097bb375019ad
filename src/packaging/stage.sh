#!/bin/sh
# stage.sh BUILD VERSION SHARED -- lay out in BUILD/stage exactly what an installation holds below its prefix.
set -eu
build=$1 version=$2 shared=$3
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

# Relative to its own place, so that a prefix may be moved. What is private is for those who link the static library.
pkgconfig() {
    # shellcheck disable=SC2016 # pkg-config expands these
    printf '%s\n' 'prefix=${pcfiledir}/../..' 'includedir=${prefix}/include' 'libdir=${prefix}/lib' '' \
        'Name: boilback' \
        'Description: the boil of an open tank of caustic salt solution when steel, water or heat goes in or out' \
        "Version: $version" 'Requires.private: gsl' 'Cflags: -I${includedir}' 'Libs: -L${libdir} -lboilback' 'Libs.private: -lm'
}

put 755 bin "$build/boilback"
put 644 lib "$build/libboilback.a" "$build/$shared"
ln -s "$shared" "$stage/lib/libboilback.so"
put 644 include model/boilback.h
put 644 share/boilback/scenarios scenarios/*
put 644 share/boilback/scenarios/lessons scenarios/lessons/*
put 644 share/boilback/scenarios/plan scenarios/plan/*
for script in plots/*.gp; do # one draws what only the tests write
    [ "$script" = plots/validate.gp ] || put 644 share/boilback/plots "$script"
done
put 644 share/doc/boilback README.md
documents
mkdir -p "$stage/lib/pkgconfig"
pkgconfig >"$stage/lib/pkgconfig/boilback.pc"
