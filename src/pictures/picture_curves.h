/* pictures/picture_curves.h -- panels of curves over one axis. */
#ifndef PICTURES_PICTURE_CURVES_H
#define PICTURES_PICTURE_CURVES_H

#include "base/format.h"
#include "pictures/picture.h"

typedef enum { CURVE_LINE, CURVE_DASHED, CURVE_POINTS } curve_kind;

typedef struct {
    curve_kind kind;
    const char *words; /* in the legend; "": not in it */
    unit_dimension dimension;
    double (*y)(const void *rows, size_t i); /* SI; NaN: none there */
} curve;

/* The function that reads a member of a row. */
#define CURVE_COLUMN(name, record, member)                                                                                     \
    static double name(const void *rows, size_t i)                                                                             \
    {                                                                                                                          \
        return ((const record *)rows)[i].member;                                                                               \
    }

#define PANEL_CURVES 3

typedef struct {
    const char *words; /* "Boils at": its unit follows */
    curve curves[PANEL_CURVES];
    size_t count;
} panel;

typedef struct {
    const char *title, *said; /* any text */
    const char *axis;         /* "Salts by mass": its unit follows; "" with a clock */
    unit_dimension dimension; /* of x */
    bool clock;               /* x are times from start_s after midnight */
    double start_s;
    const void *rows;
    size_t rows_count;
    double (*x)(const void *rows, size_t i); /* SI, ascending or not */
    const panel *panels;
    size_t panels_count;
    unit_system system;
} curves;

/* False with the problem when there is no picture; the drawing is freed with picture_forget. */
bool picture_curves(const curves *c, picture_format format, picture_drawn *drawn, picture_problem *problem);

#endif
