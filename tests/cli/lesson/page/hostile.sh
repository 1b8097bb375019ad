# Titles and names that would do something if they were ever taken for markup, two a page; the page is XML, and holds no address to
# fetch from.
command -v python3 >/dev/null || exit 77
hostile() { # title file
    { printf 'title = %s\nduration = 6 min\n' "$1"; sed '/^title/d; /^duration/d; s/^every.*load/0:05 load/; /^every/d' calm.bath; } >"$2"
}
pair() { # title title
    hostile "$1" './<script>alert(1)<.script>.bath'
    hostile "$2" other.bath
    boilback lesson './<script>alert(1)<.script>.bath' other.bath --html page.html >/dev/null || echo "failed: $1, $2"
    python3 -c 'import xml.dom.minidom; xml.dom.minidom.parse("page.html")' || echo "no XML: $1, $2"
    grep -o '<script' page.html | wc -l | grep -v '^2$'
    grep -n '[a-z]*://' page.html | grep -v 'http://www.w3.org/[0-9]*/\(svg\|xhtml\)'
    LC_ALL=C grep -c "$(printf '[\001-\010\013-\037\177]')" page.html | grep -v '^0$'
}
pair '</title></style></h1><script>alert(1)</script>' '" onload="alert(1)'
pair "' style='x" '&lt;script&gt; &#60;script&#62; &amp;'
pair '--><![CDATA[<script>' "$(printf 'x%.0s' $(seq 200))"
pair "$(printf 'no characters \357\277\276 \357\277\277')" "$(printf '\357\277\276')"
pair ']]></script>' 'Härten 水 😀 ليل'
exit 0
