boilback run calm.bath --csv - --step "1 h" | cut -d, -f1-2
