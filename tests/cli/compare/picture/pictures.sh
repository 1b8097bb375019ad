command -v gnuplot >/dev/null || exit 77
boilback compare calm.bath night.bath --plot pair.svg >/dev/null && [ "$(head -c 5 pair.svg)" = '<?xml' ] || echo "no svg"
boilback compare calm.bath night.bath --plot pair.pdf >/dev/null && [ "$(head -c 5 pair.pdf)" = '%PDF-' ] || echo "no pdf"
boilback compare calm.bath night.bath --plot - | grep -q 'B water' || echo "nothing in the terminal"
