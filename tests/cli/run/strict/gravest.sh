boilback run night.bath --strict >/dev/null
