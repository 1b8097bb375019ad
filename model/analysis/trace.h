/* analysis/trace.h -- what is read from the rows of a run: a value between two of them, and fewer of them for a picture without
   losing what it is looked at for. */
#ifndef BOIL_ANALYSIS_TRACE_H
#define BOIL_ANALYSIS_TRACE_H

#include <stddef.h>

#include "boilback.h"

/* The double that stands at offset `where` of a row, at a time, s: straight between the rows around it, beyond the last row
   that row's. The history has a row at least, the time is not before the first one's. */
double boil_trace_at(const boil_history *h, size_t where, double time_s);

/* Leaves about `most` rows (12 at least, else nothing is done), in place and in order, and returns how many. In each
   stretch of time first and last row are kept, and the highest and lowest of temperature, boiling point, steam, level and
   layer; and everywhere the rows on both sides of a change between boiling and quiet, even beyond `most`. */
size_t boil_trace_thinned(boil_row *rows, size_t count, size_t most);

#endif
