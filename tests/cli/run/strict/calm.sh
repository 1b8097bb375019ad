boilback run calm.bath --strict >/dev/null
