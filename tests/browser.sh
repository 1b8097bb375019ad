#!/bin/sh
# browser.sh BUILD [FOLDER] -- what `boilback lesson --html` writes, in a browser: figures, keys, slow motion, names for a screen reader,
# paper, size, cost. Node and Chromium of the distribution; without them it is skipped. Firefox, of another engine, shows all but what
# browser/check.mjs names; without it that is skipped. FOLDER gets pictures for a person to look at.
# The last line is "N passed, N failed, N skipped".
build=$(cd "$1" && pwd) || exit 2
here=$(cd "$(dirname "$0")" && pwd)
scenarios=$here/../scenarios
. "$here/expect.sh"
for browser in "${BROWSER_PROGRAM:-}" chromium chromium-browser; do
    [ -n "$browser" ] && command -v "$browser" >/dev/null && break
    browser=
done
if [ -z "$browser" ] || ! command -v node >/dev/null; then
    skip "the page in a browser (no node, or no chromium)"
    finish
    exit
fi
page() { # name file...
    name=$1
    shift
    "$build/boilback" lesson "$@" --html "$work/$name.html" >/dev/null || exit 2
}
page pair "$scenarios/water-while-quiet.bath" "$scenarios/water-while-boiling.bath"
page alone "$scenarios/normal-shift.bath"
page tall "$scenarios/tall-narrow.bath" "$scenarios/normal-shift.bath"
page days "$scenarios/weekend.bath"
page si "$scenarios/salt-slug.bath" "$scenarios/salt-sifted.bath" --units si
sed 's|^title *=.*|title = </script><img src=x onerror=alert(1)> ليل '"$(printf 'x%.0s' $(seq 200))"'|' "$scenarios/water-while-quiet.bath" >"$work/hostile.bath"
page hostile "$work/hostile.bath"
page monday "$scenarios"/lessons/*monday-morning.bath
page asks "$scenarios"/lessons/*water-while-it-boils.bath
"$build/boilback" lesson "$scenarios"/lessons/*water-while-it-boils.bath --all "$work/deck" >/dev/null || exit 2
for bath in "$scenarios"/*.bath "$here"/cli/baths/*.bath; do
    "$build/boilback" lesson "$bath" --units si --html "$work/every-$(basename "$bath" .bath).html" >/dev/null 2>&1
done
for run in quiet boiling; do
    "$build/boilback" run "$scenarios/water-while-$run.bath" --step '0.1 s' --csv "$work/$run.csv" >/dev/null || exit 2
done
# Each answer of a lesson as a scenario of its own, carried out apart from the page.
asks=$(ls "$scenarios"/lessons/*water-while-it-boils.bath)
sed -n 's/^choice [^=]*= //p' "$asks" | tr ';' '\t' | while IFS= read -r acts; do
    answer=$((${answer:-0} + 1))
    {
        sed '/^\[lesson\]/,$d' "$asks"
        sed -n '/^\[schedule\]/,/^$/p' "$asks"
        echo "$acts" | tr '\t' '\n'
    } >"$work/answer-$answer.bath"
    "$build/boilback" run "$work/answer-$answer.bath" --step '0.1 s' --csv "$work/answer-$answer.csv" --brief >"$work/answer-$answer.brief" || exit 2
done
look() { # program, how it is spoken to, a word for node; pictures
    BROWSER_PROGRAM=$1 BROWSER_SPEAKS=$2 timeout 900 node "$3" "$here/browser/check.mjs" "$work" "${4:-}" >"$work/looked"
    sed '$d' "$work/looked"
    counts=$(sed -n '$s/^\([0-9]*\) passed, \([0-9]*\) failed.*/\1 \2/p' "$work/looked")
    [ -n "$counts" ] || { echo "FAILED: $1 ended early" && counts="0 1"; }
    passed=$((passed + ${counts% *}))
    failed=$((failed + ${counts#* }))
}
look "$browser" ./browser.mjs --no-warnings "${2:-}"
if ! command -v firefox-esr >/dev/null; then
    skip "the page in Firefox (no firefox-esr)"
elif ! node --experimental-websocket -e 0 2>/dev/null; then
    skip "the page in Firefox (an old node)"
else
    look firefox-esr ./bidi.mjs --experimental-websocket
fi
finish
