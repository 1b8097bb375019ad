#!/bin/sh
# checks.sh -- the checks can fail: layering.sh finds each kind of mistake, close.awk tells last digits from others; and
# install_tools.sh takes CC as words.
. "$(dirname "$0")/expect.sh"
tests=$(cd "$(dirname "$0")" && pwd)

fails() {
    ! "$@"
}

tree() { # a sound one, anew: two folders of model/, one of src/, all with full paths
    rm -rf "$work/tree"
    mkdir -p "$work/tree/tests" "$work/tree/model/low" "$work/tree/model/high" "$work/tree/src/top"
    printf '%s\n' model/low model/high src/top >"$work/tree/tests/layers"
    : >"$work/tree/model/low/a.h"
    echo '#include "low/a.h"' >"$work/tree/model/low/b.h"
    echo '#include "low/b.h"' >"$work/tree/model/high/c.h"
    echo '#include "high/c.h"' >"$work/tree/src/top/d.c"
}

refuses() { # file line: the tree is not sound with that line in that file
    tree
    echo "$2" >>"$work/tree/$1"
    fails "$tests/layering.sh" "$work/tree"
}

agree() { # text text
    echo "$1" >"$work/expected"
    echo "$2" >"$work/got"
    awk -f "$tests/close.awk" "$work/expected" "$work/got"
}

tree
expect "a sound tree is sound" "$tests/layering.sh" "$work/tree"
expect "a lower folder must not include a higher one" refuses model/low/a.h '#include "high/c.h"'
expect "headers of a folder must not go round in a circle" refuses model/low/a.h '#include "low/b.h"'
expect "a header with its .c file must not go round in a circle" refuses model/low/a.c '#include "low/b.h"'
expect "a name must be from the root" refuses model/high/c.h '#include "b.h"'
expect "model must not print" refuses model/low/a.h 'int printf(const char *format, ...);'
expect "model must not have GSL allocate" refuses model/low/a.h 'gsl_vector *gsl_vector_alloc(const size_t n);'
mkdir "$work/tree/src/other"
expect "a folder must be listed" refuses src/other.c '#include "top/d.c"'

expect "CC may hold a launcher and options" "$tests/install_tools.sh" " env  cc -O1" stdio.h "" ""

expect "one unit of the last place agrees" agree 'x 0.01 lb at 9:05' 'x 0.02 lb at 9:05'
expect "a millionth agrees" agree '{"a": 1.23456789012e-05}' '{"a": 1.23456789999e-05}'
expect "two units do not" fails agree 'x 0.01 lb' 'x 0.03 lb'
expect "other words do not" fails agree 'x 0.01 lb' 'x 0.01 kg'
expect "other signs do not" fails agree 'x -0.01 lb' 'x 0.01 lb'
expect "another number of numbers does not" fails agree 'x 1 2' 'x 1 2 3'
expect "a line more does not" fails agree 'x 1' 'x 1
x 1'

finish
