#include "fuzz/mutate_table.h"
#include "fuzz/target.h"

CHANGED_BY(mutate_table)
TARGET(csv)
