/* pictures/picture_marks.h -- the findings as numbered marks over time, with a list of what they say. */
#ifndef PICTURES_PICTURE_MARKS_H
#define PICTURES_PICTURE_MARKS_H

#include "base/format.h"
#include "describe/carried_out.h"
#include "pictures/picture.h"

/* Listed at most; one line then tells how many more there are. */
#define MARKS_MAX ((size_t)14)

/* Of each, at most; plots/run.gp has room for as many, and for that line. */
#define MARK_LINES_MAX ((size_t)3)

/* Writes marks.tsv: a row a finding: number, time (NaN: the whole run), lane from 0 (marks that would overlap take
   different ones), severity from 0, 1 when it is likely and 0 when only possible, clock, words. Words that are too long go on
   in rows of number 0. */
void picture_marks(picture *p, const carried_out *o, unit_system s, picture_format format);

#endif
