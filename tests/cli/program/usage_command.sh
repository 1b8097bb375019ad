boilback slution
