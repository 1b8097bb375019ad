# Titles and names that would do something if they were ever taken for markup; the page is XML, and holds no address to fetch from.
command -v python3 >/dev/null || exit 77
long=$(printf 'x%.0s' $(seq 200))
for title in '</title></style></h1><script>alert(1)</script>' '" onload="alert(1)' "' style='x" '&lt;script&gt; &#60;script&#62; &amp;' \
    '--><![CDATA[<script>' "$long" 'Härten 水 😀' 'ليل 1'; do
    { printf 'title = %s\nduration = 10 min\n' "$title"; sed '/^title/d; /^duration/d; s/^every.*load/0:05 load/; /^every/d' calm.bath; } >hostile.bath
    cp hostile.bath './<script>alert(1)<.script>.bath'
    boilback lesson './<script>alert(1)<.script>.bath' calm.bath --html page.html >/dev/null || echo "failed: $title"
    python3 -c 'import sys, xml.dom.minidom; xml.dom.minidom.parse("page.html")' || echo "no XML: $title"
    grep -o '<script' page.html | wc -l | grep -v '^2$'
    grep -n '[a-z]*://' page.html | grep -v 'http://www.w3.org/[0-9]*/\(svg\|xhtml\)'
    LC_ALL=C grep -c "$(printf '[\001-\010\013-\037\177]')" page.html | grep -v '^0$'
done
exit 0
