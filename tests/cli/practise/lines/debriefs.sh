# Every lesson worked recklessly, and looked back on: what was done, what came of it, and what care makes of it.
for lesson in "$BOILBACK_DATA"/scenarios/lessons/*.bath; do
    echo "== ${lesson##*/}"
    sed -n '/^\[reckless\]/,/^\[/p' "$lesson" | grep -v '^\[' | boilback practise "$lesson" --script - |
        sed -n '/^Not passed/,/^ A prediction is never/p'
done
echo "== nothing done"
echo end | boilback practise "$BOILBACK_DATA"/scenarios/lessons/02*.bath --script - | sed -n '/^Not passed/,/^ A prediction is never/p'
