/* base/units.h -- the border between the words people use and SI. One table of units; nothing else in the program knows a
   factor. */
#ifndef BASE_UNITS_H
#define BASE_UNITS_H

#include <stdbool.h>
#include <stddef.h>

/* A temperature has an offset, a difference none; a gauge pressure counts from the room's own, a pressure is absolute. */
/* clang-format off */
typedef enum {
    DIM_LENGTH, DIM_AREA, DIM_VOLUME, DIM_MASS, DIM_TIME, DIM_TEMPERATURE, DIM_DIFFERENCE, DIM_GAUGE_PRESSURE, DIM_PRESSURE,
    DIM_POWER, DIM_ENERGY, DIM_CONCENTRATION, DIM_VOLUME_FLOW, DIM_MASS_FLOW, DIM_COEFFICIENT, DIM_VOLUME_PER_AREA, DIM_SPEED,
    DIM_FLUX, DIM_STRESS, DIM_FRACTION, DIM_COUNT
} unit_dimension;
/* clang-format on */

/* Several dimensions at once, where a quantity may be of either: UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS). */
#define UNIT_OF(dimension) (1u << (dimension))

#define UNIT_SPELLINGS 13

/* SI value = (value + offset) * factor. */
typedef struct {
    unit_dimension dimension;
    double factor, offset;
    const char *spellings[UNIT_SPELLINGS]; /* the first is the one to print; NULL after the last */
} unit;

/* The unit of that spelling (exactly, as in the table); NULL when it is not of that dimension. */
const unit *unit_spelt(unit_dimension d, const char *spelling);
double unit_si_value(const unit *u, double value); /* of so many of it; NaN of NULL */

/* Value in SI of `value` in the unit of that spelling, as by these two. NaN when it is not of that dimension. */
double unit_to_si(unit_dimension d, const char *spelling, double value);
const char *unit_si(unit_dimension d); /* "kg/m3"; NULL for a ratio or a bare number */
double unit_from_si(unit_dimension d, const char *spelling, double si);

/* The longest spelling of any of the dimensions at the start of a text, ending where a word ends; NULL when there is
   none. `used` gets its length in bytes. The degree sign reads as "deg", superscript two and three as digits. */
const unit *unit_scan(unsigned dimensions, const char *text, size_t length, size_t *used);

/* Why a spelling that people do use is refused, and what to write instead; NULL when it is not one of those. */
const char *unit_refusal(const char *text, size_t length);

/* The units of a dimension one by one, index from 0; NULL beyond the last. */
const unit *unit_listed(unit_dimension d, size_t index);

void unit_accepted(unsigned dimensions, char *out, size_t size); /* "m, cm, mm, in or ft" */
void unit_describe(unsigned dimensions, char *out, size_t size); /* "a volume or a mass" */
const char *unit_example(unit_dimension d);                      /* "24 in" */

/* Whether a dimension may be written "1 lb per 2 gal", and what stands over and under the line. */
bool unit_quotient(unit_dimension d, unit_dimension *over, unit_dimension *under);

#endif
