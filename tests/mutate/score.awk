# score.awk -- of `survivors` and what has been tried: each survivor, with the reason where it stands there, and the score.
BEGIN { FS = "\t" }
FILENAME ~ /survivors$/ {
    if (/^[^ #]/) last = $0
    if (/^ /) reason[last] = reason[last] $0
    next
}
$1 == "none" { next }
{ all++ }
$1 ~ /^killed/ { killed++ }
$1 == "survived" {
    split($2, at, " ")
    if ($3 in reason) { known++; print "known    " at[2] " of " $3 } else { left++; print "SURVIVED " at[2] " of " $3 }
}
END {
    could = all - known
    printf "%d mutants, %d killed, %d survived with a reason, %d without: %.0f %% of all, %.0f %% of those without a reason to\n",
        all, killed, known, left, all ? 100 * killed / all : 0, could ? 100 * killed / could : 0
}
