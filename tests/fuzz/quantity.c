#include "fuzz/target.h"

TARGET(quantity)
