/* validate/verdict.c -- whether a row is as its table says. */
#include "validate/validate.h"

bool validate_compared(const validate_row *row)
{
    return !isnan(row->distance);
}

bool validate_inside(const validate_row *row)
{
    return fabs(row->distance) <= 1;
}

const char *validate_wrong(const validate_row *row)
{
    const bool reason = row->reason[0] != '\0', inside = validate_inside(row);
    if (!isfinite(row->ours.low) || !isfinite(row->ours.high))
        return "has no answer";
    if (!validate_compared(row))
        return NULL;
    if (!inside && !reason)
        return "lies outside of its source's band, and no reason stands in its column `outside` or in pins.csv";
    if (inside && reason)
        return "lies inside of its source's band: take its reason out";
    return row->astray ? "lies outside of its pin" : NULL;
}
