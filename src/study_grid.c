#include "study_grid.h"

#include <math.h>
#include <stdio.h>

/* Heights above the sea are no lengths of tanks. */
static const double long_m = 30;

const char *study_grid_unit(const study *s, show_system system)
{
    const study_input *i = &s->grid.input;
    if (i->dimension >= DIM_COUNT)
        return "";
    if (i->dimension == DIM_LENGTH && i->spread.high >= long_m)
        return system == SHOW_US ? "ft" : "m";
    return show_unit(system, i->dimension);
}

double study_grid_shown(const study *s, show_system system, size_t cell)
{
    unit_dimension d = s->grid.input.dimension;
    double si = study_grid_value(s, cell);
    return d < DIM_COUNT ? unit_from_si(d, study_grid_unit(s, system), si) : si;
}

shown study_grid_words(const study *s, show_system system, size_t cell)
{
    shown t;
    const char *spelling = study_grid_unit(s, system);
    snprintf(t.text, sizeof t.text, "%.5g%s%.12s", study_grid_shown(s, system, cell), spelling[0] != '\0' ? " " : "", spelling);
    return t;
}

boil_odds study_grave_odds(const study *s, size_t cell)
{
    size_t rows = study_cell_rows(s), yes = 0, count = 0;
    for (size_t row = cell * rows; row < (cell + 1) * rows; row++) {
        bool grave = false;
        if (!study_needs(s, row) || !study_made(s, row))
            continue;
        for (size_t k = 0; k < s->findings; k++)
            grave = grave || study_row(s, row)[study_finding_output(k)] >= 1 + (double)BOIL_WARNING;
        count++;
        yes += grave;
    }
    return boil_odds_of(yes, count);
}
