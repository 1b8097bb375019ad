boilback solution --boiling-point '285 degF'
