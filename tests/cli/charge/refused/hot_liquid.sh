for strength in 60 89; do boilback charge calm.bath --liquid --liquid-strength "$strength %" | head -3; done
