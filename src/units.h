/* units.h -- the border between the words people use and SI. One table of units; nothing else in the program knows a factor. */
#ifndef UNITS_H
#define UNITS_H

#include <stddef.h>

typedef enum {
    DIM_LENGTH, DIM_AREA, DIM_VOLUME, DIM_MASS, DIM_TIME,
    DIM_TEMPERATURE,      /* with offset: degC, degF, K */
    DIM_DIFFERENCE,       /* a temperature difference: no offset */
    DIM_PRESSURE,         /* absolute, but psig, which is refused unless the key allows it */
    DIM_POWER,
    DIM_CONCENTRATION,    /* g/L kg/m3 lb/gal oz/gal */
    DIM_VOLUME_FLOW,      /* L/min mL/min gal/h gal/min */
    DIM_MASS_FLOW,        /* kg/h kg/min lb/h */
    DIM_COEFFICIENT,      /* W/m2K Btu/hft2F */
    DIM_VOLUME_PER_AREA,  /* mL/m2 gal/1000ft2 */
    DIM_SPEED,            /* m/s ft/min */
    DIM_FRACTION          /* % */
} unit_dimension;

/* Value in SI of `value` in the unit spelt `unit` (exactly, as in the table). NaN when the spelling is not of that dimension. */
double unit_to_si(unit_dimension d, const char *unit, double value);
double unit_from_si(unit_dimension d, const char *unit, double si);

#endif
