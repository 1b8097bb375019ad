# Picture and page are XML, whatever is in a title [XML 1.0, 2.4: no text may hold the end of a CDATA section]; what a terminal gets
# holds no form feed.
command -v gnuplot >/dev/null && command -v python3 >/dev/null || exit 77
sed 's/^title.*/title = a ]]> b ]>]]]>]]>/' calm.bath >title.bath
boilback run title.bath --plot out.svg --html out.html --brief
for file in out.svg out.html; do python3 -c 'import sys, xml.dom.minidom; xml.dom.minidom.parse(sys.argv[1])' $file && echo "$file is well-formed"; done
boilback run title.bath --plot - | tr -cd '\f' | wc -c
