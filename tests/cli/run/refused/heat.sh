# A burner for a works under a trough of ten square feet.
{ echo 'duration = 1 h'; sed 's/300 kBtu/20000 kBtu/' trough.bath; } | boilback run -
