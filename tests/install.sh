#!/bin/sh
# install.sh BUILD -- install to a temporary prefix, use what is there, move it, use it again, remove it. The last
# line is "N passed, N failed, N skipped".
build=$1
. "$(dirname "$0")/expect.sh"

run_make() { # argument...
    "${MAKE:-make}" --no-print-directory BUILD="$build" "$@"
}

files_of() { # folder
    (cd "$1" && find . -type f -o -type l | sed 's,^\./,,' | LC_ALL=C sort)
}

# What must be there, from the sources and from help.
expected_files() {
    echo bin/boilback
    echo include/boilback.h
    echo lib/libboilback.a
    echo lib/libboilback.so
    sed -n 's,^#define BOIL_VERSION_TEXT "\(.*\)\..*",lib/libboilback.so.\1,p' model/boilback.h
    echo lib/pkgconfig/boilback.pc
    echo share/boilback/installed
    for file in plots/*.gp; do [ "$file" = plots/validate.gp ] || echo "share/boilback/$file"; done
    echo share/doc/boilback/README.md
    find scenarios -type f | sed 's,^,share/boilback/,'
    echo share/man/man1/boilback.1
    echo share/man/man5/boilback-output.5
    echo share/man/man5/boilback-scenario.5
    echo share/man/man7/boilback-guide.7
    echo share/man/man7/boilback-limits.7
    "$build/boilback" --help | sed -n '/^commands:/,/^$/s,^  \([a-z][a-z-]*\).*,share/man/man1/boilback-\1.1 share/boilback/schema/\1.json,p' | tr ' ' '\n' | grep -v schema/practise
    echo share/bash-completion/completions/boilback
    echo share/zsh/site-functions/_boilback
    echo share/fish/vendor_completions.d/boilback.fish
}

same_files() { # folder
    expected_files | LC_ALL=C sort >"$work/expected"
    files_of "$1" | diff "$work/expected" -
}

runs() { # prefix: the installed program, away from the sources
    (cd / && "$1/bin/boilback" --version && "$1/bin/boilback" check "$1/share/boilback/scenarios/normal-shift.bath" &&
        "$1/bin/boilback" run "$1/share/boilback/scenarios/bench-tank.bath")
}

draws() { # prefix: with the scripts that were installed, not those of the sources
    (cd "$work" && "$1/bin/boilback" run "$1/share/boilback/scenarios/bench-tank.bath" --plot picture.svg &&
        grep -q '<svg' picture.svg)
}

# A library built with sanitizers needs them in whatever links it.
sanitizers() { # prefix
    if nm "$1/lib/libboilback.a" 2>/dev/null | grep -q __asan_init; then
        echo -fsanitize=address,undefined
    fi
}

# Flags as a person would get them; GSL is taken to be where the compiler looks when pkg-config is not there.
flags() { # prefix; what pkg-config is to say
    if command -v pkg-config >/dev/null 2>&1; then
        # shellcheck disable=SC2086 # a list of words
        PKG_CONFIG_PATH=$1/lib/pkgconfig pkg-config $2 boilback
    else
        echo "-I$1/include -L$1/lib -lboilback -lgsl -lgslcblas -lm"
    fi
}

version_agrees() { # prefix
    [ "boilback $(PKG_CONFIG_PATH=$1/lib/pkgconfig pkg-config --modversion boilback)" = \
        "$("$1/bin/boilback" --version | head -1)" ]
}

# Every example is tests/example/NAME, and becomes $work/NAME.
compiles() { # prefix compiler... file
    prefix=$1
    shift
    for file in "$@"; do :; done
    # shellcheck disable=SC2046 # lists of words
    "$@" -Wall -Wextra -Wpedantic -Werror -o "$work/$(basename "$file")" $(flags "$prefix" "--cflags --libs") \
        $(sanitizers "$prefix")
}

compiles_static() { # prefix: with nothing left to find when it runs
    # shellcheck disable=SC2046,SC2086 # lists of words; CC may hold a launcher beside the compiler
    ${CC:-cc} -std=c17 tests/example/recovery.c -o "$work/recovery.static" \
        $(flags "$1" "--static --cflags --libs" | sed "s,-lboilback,$1/lib/libboilback.a,") $(sanitizers "$1")
}

carry_out() { # prefix program...
    prefix=$1
    shift
    LD_LIBRARY_PATH=$prefix/lib "$@"
}

header_stands_alone() { # prefix language compiler...: it needs no other before it, and may come twice
    prefix=$1 language=$2
    shift 2
    printf '#include <boilback.h>\n#include <boilback.h>\n' >"$work/header.$language"
    "$@" -Wall -Wextra -Wpedantic -Werror -fsyntax-only -I"$prefix/include" "$work/header.$language"
}

declared() { # header: the functions that it declares
    tr '\n' ' ' <"$1" | grep -oE 'BOIL_PUBLIC [^(;#]*\(' | sed -n 's/.*[ *]\(boil_[a-z0-9_]*\)($/\1/p' | LC_ALL=C sort
}

# No other name than those of the header can be linked to, and none of these is missing.
exports_what_it_declares() { # prefix
    declared "$1/include/boilback.h" >"$work/declared"
    nm -D --defined-only "$1/lib/libboilback.so" | awk '$2 != "A" { print $3 }' | grep -v '^_*\(asan\|ubsan\|odr_asan\)' |
        LC_ALL=C sort | diff "$work/declared" -
    [ "$(wc -l <"$work/declared")" -ge 80 ]
}

# The case of tests/example/recovery.c, as a scenario.
scenario() {
    printf '%s\n' 'duration = 30 min' '[tank]' 'length = 1.8 m' 'width = 0.9 m' 'depth = 0.75 m' 'level = 0.5 m' \
        '[bath]' 'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2' 'boiling point = 140 degC' '[heat]' 'input = 97 kW' \
        '[schedule]' '0:05  load 35 kg, plate 6 mm, at 20 degC'
}

# The library and the program say the same.
example_agrees() { # prefix example
    said=$(carry_out "$1" "$2" | sed -n 's/.*back after \([0-9]*\) s$/\1/p')
    run=$(scenario | "$1/bin/boilback" run - --json | sed -n 's/^ *"recovery_s": \([0-9.]*\).*/\1/p' | head -1)
    echo "example $said s, program $run s"
    [ -n "$said" ] && [ "$said" -gt 0 ] && [ "$said" = "$(printf '%.0f' "$run")" ]
}

# So does Python, which reads no header.
python_agrees() { # prefix
    said=$(carry_out "$1" python3 tests/example/boiling_point.py "$1/lib/libboilback.so")
    program=$("$1/bin/boilback" solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --salt-fraction '55 %' --json |
        sed -n 's/^ *"boiling_point_K": \([0-9.]*\).*/\1/p' | head -1)
    echo "example $said, program $program K"
    [ -n "$program" ] && [ "$said" = "boils at $(printf '%.2f' "$program") K" ]
}

nothing_left() { # folder: it is gone
    [ ! -e "$1" ] || { find "$1"; false; }
}

# --- a prefix of its own ---
first=$work/first
moved=$work/moved
expect "make install" run_make PREFIX="$first" install
expect "every file is there, and no other" same_files "$first"
expect "the installed program runs" runs "$first"
mv "$first" "$moved"
expect "the program runs after its prefix was moved" runs "$moved"
expect_with gnuplot "it draws after its prefix was moved" draws "$moved"
expect_with pkg-config "pkg-config and program name the same version" version_agrees "$moved"
expect "the header stands alone in C" header_stands_alone "$moved" c ${CC:-cc}
expect "the library exports what the header declares" exports_what_it_declares "$moved"
expect "the example compiles" compiles "$moved" ${CC:-cc} -std=c17 tests/example/recovery.c
expect "the example and the program agree" example_agrees "$moved" "$work/recovery.c"
expect "the example compiles with the static library" compiles_static "$moved"
expect "the static example and the program agree" example_agrees "$moved" "$work/recovery.static"
expect_with "${CXX:-c++}" "the header stands alone in C++" header_stands_alone "$moved" cpp ${CXX:-c++}
expect_with "${CXX:-c++}" "the example in C++ compiles" compiles "$moved" ${CXX:-c++} -std=c++17 tests/example/recovery.cpp
expect_with "${CXX:-c++}" "the example in C++ and the program agree" example_agrees "$moved" "$work/recovery.cpp"
if [ -z "$(sanitizers "$moved")" ]; then
    expect_with python3 "the example in Python and the program agree" python_agrees "$moved"
fi

# --- once more over it, with something in it that an earlier version had, and something foreign ---
echo 'file share/boilback/scenarios/gone.bath' >>"$moved/share/boilback/installed"
: >"$moved/share/boilback/scenarios/gone.bath"
expect "make install over an installation" run_make PREFIX="$moved" install
expect "what an earlier version had is gone" same_files "$moved"
: >"$moved/share/man/man1/foreign.1"
expect "make uninstall" run_make PREFIX="$moved" uninstall
expect "what is foreign stays" [ "$(files_of "$moved")" = share/man/man1/foreign.1 ]
expect "only its folders stay" [ "$(find "$moved" -type d | wc -l)" -eq 4 ]
expect "make install beside it" run_make PREFIX="$moved" install
rm "$moved/share/man/man1/foreign.1"
expect "make uninstall beside it" run_make PREFIX="$moved" uninstall
expect "only what stood there before stays" [ "$(find "$moved" | wc -l)" -eq 4 ]
expect "make uninstall of nothing" run_make PREFIX="$moved" uninstall

expect "make install anew" run_make PREFIX="$first" install
expect "make uninstall anew" run_make PREFIX="$first" uninstall
expect "nothing is left" nothing_left "$first"

# --- staged for a package ---
mkdir -p "$work/package/usr/bin"
expect "make install DESTDIR" run_make DESTDIR="$work/package" PREFIX=/usr install
expect "every file is below DESTDIR" same_files "$work/package/usr"
expect "make uninstall DESTDIR" run_make DESTDIR="$work/package" PREFIX=/usr uninstall
left=$(cd "$work/package" && find . | tr '\n' ' ')
expect "the folder that was there before stays" [ "$left" = ". ./usr ./usr/bin " ]

finish
