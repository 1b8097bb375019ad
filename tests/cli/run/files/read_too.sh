# A file that is read is never written over, whatever leads to it; nor is one written twice. Nothing runs then.
tell() { # the command's words
    boilback "$@" 2>&1
    echo "exit $?"
}
ln -s calm.bath link.bath
ln calm.bath second.bath
mkdir folder
ln -s ../calm.bath folder/link.bath
cp calm.bath kept
for name in calm.bath ./calm.bath link.bath second.bath folder/link.bath folder/../calm.bath; do tell run calm.bath --csv $name; done
tell run calm.bath --html link.bath
tell run - --csv calm.bath <calm.bath
tell check link.bath --csv second.bath
tell compare calm.bath night.bath --csv night.bath
cp night.bath log.svg
tell fit calm.bath log.svg --plot log.svg
tell explore calm.bath --csv calm.bath
tell explore --merge calm.bath night.bath --csv night.bath
tell run calm.bath --csv x --html x
tell run calm.bath --csv ./x.svg --plot folder/../x.svg
ln -s nothing.csv dangling.csv
tell run calm.bath --csv dangling.csv --html nothing.csv
boilback run calm.bath --csv out >out 2>said
echo "exit $?" && cat said
tell run calm.bath --csv /dev/null --html /dev/null | tail -1
cmp calm.bath kept && ls | grep -v bath
