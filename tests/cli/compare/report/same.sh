boilback compare calm.bath calm.bath | sed '/^ A prediction/,$d'
