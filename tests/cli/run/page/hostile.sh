# Titles and names that would do something if they were ever taken for markup, drawn by gnuplot as well.
command -v gnuplot >/dev/null || exit 77
long=$(printf 'x%.0s' $(seq 200))
for title in '</title></style></h1><script>alert(1)</script>' '" onload="alert(1)' "' style='x" '&lt;script&gt; &#60;script&#62; &amp;' \
    '--><![CDATA[<script>' "$long" 'Härten 水 😀'; do
    { printf 'title = %s\nduration = 10 min\n' "$title"; sed '/^title/d; /^duration/d; s/^every.*load/0:05 load/; /^every/d' calm.bath; } >hostile.bath
    cp hostile.bath './<script>alert(1)<.script>.bath'
    boilback run './<script>alert(1)<.script>.bath' --html page.html >/dev/null || echo "failed: $title"
    grep -q '<script\|CDATA\[<\|<[^>]* onload="\|<!--' page.html && echo "markup: $title"
    grep -o '</svg>' page.html | wc -l | grep -v '^4$' # tank, the shift twice, and all curves
    LC_ALL=C grep -c "$(printf '[\001-\010\013-\037\177]')" page.html | grep -v '^0$'
done
case $(cat page.html) in *'Härten 水 😀'*) ;; *) echo "lost: $title" ;; esac
exit 0
