#include "fuzz/target.h"

TARGET(options)
