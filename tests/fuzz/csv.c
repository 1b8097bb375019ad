#include "fuzz/target.h"

TARGET(csv)
