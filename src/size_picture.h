/* size_picture.h -- the picture of a sizing: slowest recovery against heat, the limit, and the window between. */
#ifndef SIZE_PICTURE_H
#define SIZE_PICTURE_H

#include "picture.h"
#include "size_curve.h"

bool size_picture(const size_answer *a, const size_curve *c, show_system s, picture_format format,
                  picture_drawn *drawn, picture_problem *problem);

#endif
