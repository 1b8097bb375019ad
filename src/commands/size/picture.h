/* commands/size/picture.h -- the picture of a sizing: slowest recovery against heat, the limit, and the window between. */
#ifndef COMMANDS_SIZE_PICTURE_H
#define COMMANDS_SIZE_PICTURE_H

#include "commands/size/curve.h"
#include "pictures/picture.h"

bool size_picture(const size_answer *a, const size_curve *c, unit_system s, picture_format format, picture_drawn *drawn,
                  picture_problem *problem);

#endif
