#include "fuzz/target.h"

TARGET(scenario)
