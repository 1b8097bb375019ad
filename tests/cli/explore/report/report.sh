boilback explore uncertain.bath --samples 32
