boilback --vresion
