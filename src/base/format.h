/* base/format.h -- quantities as people read them: few digits, the unit behind. SI in; "-" for what is not there (NaN). */
#ifndef BASE_FORMAT_H
#define BASE_FORMAT_H

#include "base/text.h"
#include "base/units.h"
#include "boilback.h"

typedef enum { UNITS_US, UNITS_SI } unit_system; /* in the order of "us|si" */

typedef TEXT_OF(48) formatted_text;

formatted_text format_quantity(unit_system s, unit_dimension d, double si); /* "7.1 in"; a time as format_duration */
#define SHOWN(system, of, si) format_quantity(system, DIM_##of, si).text    /* for the expression it stands in */
formatted_text format_number(unit_system s, unit_dimension d, double si);   /* "7.1", for a column whose head names the unit */
const char *format_unit(unit_system s, unit_dimension d);                   /* "in" */
/* The same, but feet or metres for what is no length of a tank: a height above the sea. */
const char *format_unit_for(unit_system s, unit_dimension d, double si);
formatted_text format_exact(unit_system s, unit_dimension d,
                            double si); /* four significant digits, or all before the point: "0.25 in", "12346 kg" */

/* A value and its limit in one unit with as many decimals, more until they look different: "121.6 s" and "120.0", of minutes
   "2 min 1.6 s" and "2 min 0.0 s". The limit without its unit, where that can be. Of a ratio, which has no dimension: "x3.56"
   and "x1.00" (DIM_COUNT). */
typedef struct {
    formatted_text value, limit;
} format_pair;
format_pair format_value_and_limit(unit_system s, unit_dimension d, double value, double limit);

/* No further apart than any report tells apart: a second, a twentieth of a kelvin, a millimetre, a tenth of a per cent of a whole; of
   masses a thousandth or 5 g, of all else half a per cent. So are two that are both not there. */
bool format_same(unit_dimension d, double a, double b);

formatted_text format_bare(unit_system s, unit_dimension d, double si); /* format_number, without ".0" */

formatted_text format_duration(double s);                      /* "45 s", "2 min", "4.5 min", "2.5 h" */
formatted_text format_clock(double start_s, double t);         /* "7:22", cut to the minute; "0:10+1d" on the next day */
formatted_text format_clock_exact(double start_s, double t);   /* "9:06:31", the seconds only where there are any */
formatted_text format_clock_seconds(double start_s, double t); /* "9:06:00", "0:10:00+1d" */
formatted_text format_ratio(double ratio);                     /* "x1.3" */
formatted_text format_chance(double share);     /* "23 %"; "<1 %", ">99 %": one is never made certain by rounding; NaN: "-" */
formatted_text format_odds(const boil_odds *o); /* their interval: "18 % to 29 %" */
formatted_text format_count(size_t n, const char *one, const char *many); /* "1 load", "2 loads" */

#endif
