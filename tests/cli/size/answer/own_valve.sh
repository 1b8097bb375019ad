# A valve of the scenario's own lets in too little long before the freeboard is short: that is the end to count on.
{
    sed '/water/d; s/duration = 2 h/duration = 8 h/; s/to 1:35/to 7:35/' calm.bath
    printf '[water control]\nset point = 285 degF\ndifferential = 1 degF\nrate = 20 gal/h\nwater temperature = 60 degF\n'
} >valve.bath
boilback size valve.bath | sed -n '1,2p; /in the scenario/p; /^Most heat/,/^ Likely/p'
