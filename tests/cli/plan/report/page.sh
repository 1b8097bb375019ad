# The page has a box for each act, a bar for each dip and its quiet, each pour and break, and is well-formed.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
echo '[breaks]
6:30 to 6:45 coffee' >>five-jobs.bath
boilback plan five-jobs.bath --html page.html >/dev/null
echo "$(grep -o 'class="tick"' page.html | wc -l) boxes, $(grep -c '<rect' page.html) bars"
command -v python3 >/dev/null || exit 77
python3 -c 'import xml.dom.minidom; xml.dom.minidom.parse("page.html")'
boilback plan five-jobs.bath --html - | grep -c 'class="rule"'
