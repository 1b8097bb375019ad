for bath in calm night dry shift; do boilback run $bath.bath --brief 2>/dev/null; done
