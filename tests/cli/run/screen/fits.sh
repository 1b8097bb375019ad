# What a terminal shows at once: at most 40 lines of 80 columns, of every shipped scenario, in both unit systems.
for file in "$BOILBACK_DATA"/scenarios/*.bath; do
    for system in us si; do
        boilback run "$file" --units $system | awk -v name="${file##*/}" '
            length > wide { wide = length }
            END { if (NR > 40 || wide > 80) print name ": " NR " lines, " wide " columns"; else print name ": fits" }'
    done
done | sort -u
