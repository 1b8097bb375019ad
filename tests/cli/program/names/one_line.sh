# A file's name may hold line ends and what a terminal obeys, ESC, U+009B, U+202E, or bytes that are no text: each message stays one
# line, and nothing of these reaches the terminal or JSON as it is.
name=$(printf 'a\nb\033[31m\342\200\256\302\233\233.bath')
cp calm.bath "$name"
printf 'title = x\nno key\n' >"bad$name"
said() {
    boilback "$@" >out 2>err
    echo "$? $(grep -c '^boilback: ' err) of $(grep -vc '^    \|^usage: \|^see ' err): $(head -n 1 err)"
    LC_ALL=C grep -alP '[\x00-\x08\x0b-\x1f]|\xe2\x80\xae|\xc2\x9b' out err
}
for command in run check charge compare size explore fit; do said $command "missing$name" "$name"; done
said check "bad$name"
said correct --reads 284degF --level 15in "missing$name"
said explore --merge "bad$name"
said fit calm.bath "bad$name"
said run calm.bath --csv "missing$name/out.csv"
said run calm.bath --plot "$name"
said run calm.bath "--$name"
said run calm.bath --step "$name"
said run calm.bath --units "$name"
said "$name"
said run "$name" --csv "$name"
said run "$name" --full
said run "$name" --json
said check "$name"
said lesson "missing$name"
said plan "missing$name"
printf 'nonsense\n' >"$name.orders"
said practise calm.bath --script "$name.orders"
