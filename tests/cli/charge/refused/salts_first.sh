boilback charge calm.bath --salts-first
