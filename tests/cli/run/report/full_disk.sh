boilback run calm.bath >/dev/full
