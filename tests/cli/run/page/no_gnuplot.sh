# The page is whole without a picture, and says why there is none. What is shown: its headings, captions and run sheet.
mkdir bin && ln -s "$(command -v boilback)" bin/boilback
(PATH=$PWD/bin boilback run night.bath --html page.html >report)
echo $?
head -1 report
grep -o '<h[12][^>]*>[^<]*\|<caption>[^<]*\|No picture[^<]*' page.html | sed 's/<[^>]*>//'
sed -n '/<section[^>]*"sheet"/,/<.section>/p' page.html | sed 's/<[^>]*>/ /g; s/  */ /g; s/^ //; s/ $//'
ls | grep -v bath
