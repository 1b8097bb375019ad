# What people write for a fire that is set back, and degrees that are nobody's: each is told what to write.
{
    cat calm.bath
    printf '1:50 heat %s\n' low 'half fire' 'to 30 %' '220 degF' 30
} | sed 's/^temperature = 75 degF/temperature = 75 degrees/' >set_back.bath
boilback check set_back.bath
