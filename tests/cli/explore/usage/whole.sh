boilback explore uncertain.bath --samples 1e9
boilback explore uncertain.bath --threads many
