# Texts and names that would do something if they were ever taken for code.
command -v gnuplot >/dev/null || exit 77
long=$(printf 'x%.0s' $(seq 200))
mkdir 'a "folder" `touch pwned` $(touch pwned)' && cp -R "$BOILBACK_DATA/plots" a*/
BOILBACK_DATA=$(echo "$PWD"/a*)
for title in '"; system("touch pwned") # `touch pwned` $(touch pwned) @m {/Bold x} a_b^c %s \n \101 \' \
    "'; system('touch pwned'); '" '</text><script>alert(1)</script> &#0; &amp;' "$long" 'Härten 水 😀' '<touch pwned'; do
    { printf 'title = %s\nduration = 10 min\n' "$title"; sed '/^title/d; /^duration/d; s/^every.*load/0:05 load/; /^every/d' calm.bath; } >hostile.bath
    boilback run hostile.bath --plot out.svg >/dev/null || echo "failed: $title"
    case $title in
    *script*) grep -q '&lt;script' out.svg && ! grep -q '<script' out.svg || echo "markup: $title" ;;
    esac
done
for name in 'a"b`touch pwned`$(touch pwned).svg' '<touch pwned.svg' '|touch pwned.svg' 'new
line.svg' '-.svg' "quote's.svg"; do
    cp hostile.bath "./$name.bath"
    boilback run "./$name.bath" --plot "./$name" >/dev/null && [ -s "./$name" ] || echo "failed: $name"
done
find . -name pwned
exit 0
