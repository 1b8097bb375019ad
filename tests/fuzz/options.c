#include "fuzz/mutate_words.h"
#include "fuzz/target.h"

CHANGED_BY(mutate_options)
TARGET(options)
