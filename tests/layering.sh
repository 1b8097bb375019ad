#!/bin/sh
# layering.sh [FOLDER] -- checks what the sources below FOLDER (here, if it is not given) include. tests/layers there lists their
# folders, from the lowest to the highest; folders on one line do not know each other. A file includes, with the full path
# from the root of model/ or src/, only files of its own folder or of a line above it; a folder that is not listed is a
# mistake; no files include each other in a circle, inside a folder either, a header and its .c counting as one. model/ neither
# reads, prints nor changes the process, and has GSL allocate nothing. Of the files of a checkout no others stand at the top.
cd "${1:-.}" || exit 2
status=0
edges=$(mktemp) || exit 2
trap 'rm -f "$edges"' EXIT

# Prints "file:line name" and then what is wrong with it; lists who includes whom in the file EDGES.
grep -rn --include='*.[ch]' '^#include "' model src | awk -v edges="$edges" '
    function folder(path) { match(path, /\/[^\/]*$/); return substr(path, 1, RSTART - 1) }
    function stem(path) { sub(/\.[ch]$/, "", path); return path }
    function exists(path,  line) { if (!(path in seen)) { seen[path] = (getline line <path) >= 0; close(path) } return seen[path] }
    FILENAME != "-" { for (i = 1; i <= NF; i++) rank[$i] = FNR; next }
    {
        split($0, part, ":")
        match($0, /"[^"]*"/)
        name = substr($0, RSTART + 1, RLENGTH - 2)
        from = folder(part[1])
        inModel = exists("model/" name)
        inSource = exists("src/" name)
        file = (inModel ? "model/" : "src/") name
        to = folder(file)
        print stem(part[1]), stem(file) >edges
        if (!(from in rank)) wrong = "its folder is not in tests/layers"
        else if (inModel == inSource) wrong = inModel ? "is both in model/ and in src/" : "is not named from the root"
        else if (from != to && (!(to in rank) || rank[to] >= rank[from])) wrong = to " is not below " from
        else next
        print part[1] ":" part[2] ": " name ": " wrong
        bad = 1
    }
    END { exit bad }' tests/layers - >&2 || status=1
if ! tsort "$edges" >/dev/null; then
    echo "layering: these include each other in a circle" >&2
    status=1
fi
if grep -rnE '#include <(stdio|locale|signal|unistd|fcntl|time)\.h>|printf|fopen|getenv|gsl_set_error_handler' model >&2; then
    echo "model/ neither reads, prints nor changes the process" >&2
    status=1
fi
if grep -rnE 'gsl_[a-z0-9_]*alloc\b' model >&2; then
    echo "model/ owns the memory that GSL works in: GSL ends the process where memory is refused" >&2
    status=1
fi
if [ -e .git ] && git ls-files 2>/dev/null | sed 's,/.*,,' | sort -u |
    grep -vxE '\..*|Makefile|README\.md|DEVELOPERS\.md|model|plots|scenarios|src|tests' >&2; then
    echo "layering: this stands at the top, where nothing else does" >&2
    status=1
fi
exit $status
