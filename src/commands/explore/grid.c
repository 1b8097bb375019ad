#include "commands/explore/grid.h"

#include <math.h>
#include <stdio.h>

/* Heights above the sea are no lengths of tanks. */
static const double long_m = 30;

const char *explore_grid_unit(const explore_answer *s, unit_system system)
{
    const explore_input *i = &s->grid.input;
    if (i->dimension >= DIM_COUNT)
        return "";
    if (i->dimension == DIM_LENGTH && i->spread.high >= long_m)
        return system == UNITS_US ? "ft" : "m";
    return format_unit(system, i->dimension);
}

double explore_grid_shown(const explore_answer *s, unit_system system, size_t cell)
{
    unit_dimension d = s->grid.input.dimension;
    double si = explore_grid_value(s, cell);
    return d < DIM_COUNT ? unit_from_si(d, explore_grid_unit(s, system), si) : si;
}

formatted_text explore_grid_words(const explore_answer *s, unit_system system, size_t cell)
{
    formatted_text t;
    const char *spelling = explore_grid_unit(s, system);
    snprintf(t.text, sizeof t.text, "%.5g%s%.12s", explore_grid_shown(s, system, cell), spelling[0] != '\0' ? " " : "",
             spelling);
    return t;
}
