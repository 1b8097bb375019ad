BOILBACK_DATA=$PWD boilback run calm.bath --plot out.svg >/dev/null
