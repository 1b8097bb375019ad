/* cli/plot.h -- the option --plot, the same for every command that has it. */
#ifndef CLI_PLOT_H
#define CLI_PLOT_H

#include "pictures/picture.h"

typedef struct {
    const char *path; /* NULL: not asked for */
    picture_format format;
} plot;

/* False, with a complaint, when the file's ending says no format. `path` may be NULL. */
bool plot_read(const char *path, plot *p);
bool plot_is_terminal(const plot *p); /* it stands in for the report */

/* Each returns false with a complaint when there is no picture in its place; the drawing is freed. */
bool plot_failed(const plot *p, const picture_problem *problem);
bool plot_save(const plot *p, picture_drawn *drawn);

#endif
