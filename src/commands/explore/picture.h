/* commands/explore/picture.h -- the picture of a study: chances and causes, or, over a grid, how chances and percentiles go
   with it. */
#ifndef COMMANDS_EXPLORE_PICTURE_H
#define COMMANDS_EXPLORE_PICTURE_H

#include "base/format.h"
#include "commands/explore/answer.h"
#include "pictures/picture.h"

bool explore_picture(const explore_answer *s, unit_system system, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

#endif
