{ cat calm.bath; echo '0:02 salts 0:01 in 5 min'; } >clock.bath
boilback check clock.bath
