# What is not the language's own is read as what is meant, and a remark says how.
boilback check words.bath
