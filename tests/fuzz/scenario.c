#include "fuzz/mutate.h"
#include "fuzz/target.h"

CHANGED_BY(mutate)
TARGET(scenario)
