/* describe/trace_thin.h -- fewer rows of a trace for a picture, without losing what it is looked at for. */
#ifndef DESCRIBE_TRACE_THIN_H
#define DESCRIBE_TRACE_THIN_H

#include <stddef.h>

#include "simulate/run.h"

/* Leaves about `most` rows (12 at least, else nothing is done), in place and in order, and returns how many. In each
   stretch of time first and last row are kept, and the highest and lowest of temperature, boiling point, steam, level and
   layer; and everywhere the rows on both sides of a change between boiling and quiet, even beyond `most`. */
size_t trace_thinned(boil_row *rows, size_t count, size_t most);

#endif
