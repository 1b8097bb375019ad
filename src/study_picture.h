/* study_picture.h -- the picture of a study: chances and causes, or, over a grid, how chances and percentiles go with it. */
#ifndef STUDY_PICTURE_H
#define STUDY_PICTURE_H

#include "picture.h"
#include "show.h"
#include "study.h"

bool study_picture(const study *s, show_system system, picture_format format, picture_drawn *drawn,
                   picture_problem *problem);

#endif
