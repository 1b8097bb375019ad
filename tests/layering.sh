#!/bin/sh
# layering.sh -- reads tests/layers, folders from the lowest to the highest, and checks that every file includes, with the full
# path from the root of model/ or src/, only files of its own folder or of lines above it; folders on one line do not know
# each other. model/ neither reads, prints nor changes the process. A folder that is not in the list is a mistake.
status=0
grep -rn --include='*.[ch]' '^#include "' model src | awk '
    function folder(path) { return path ~ /\// ? substr(path, 1, match(path, /\/[^\/]*$/) - 1) : "" }
    function exists(path,  line) { if (!(path in seen)) { seen[path] = (getline line <path) >= 0; close(path) } return seen[path] }
    FILENAME != "-" { for (i = 1; i <= NF; i++) rank[$i] = FNR; next }
    {
        split($0, part, ":")
        match($0, /"[^"]*"/)
        name = substr($0, RSTART + 1, RLENGTH - 2)
        from = folder(part[1])
        inModel = exists("model/" name)
        inSource = exists("src/" name)
        to = folder(inModel ? "model/" name : "src/" name)
        if (!(from in rank)) wrong = "its folder is not in tests/layers"
        else if (inModel == inSource) wrong = inModel ? "is both in model/ and in src/" : "is not named from the root"
        else if (from != to && rank[to] >= rank[from]) wrong = to " is not below " from
        else next
        print part[1] ":" part[2] ": " name ": " wrong
        bad = 1
    }
    END { exit bad }' tests/layers - >&2 || status=1
if grep -rnE '#include <(stdio|locale|signal|unistd|fcntl|time)\.h>|printf|fopen|getenv|gsl_set_error_handler' model >&2; then
    echo "model/ neither reads, prints nor changes the process" >&2
    status=1
fi
exit $status
