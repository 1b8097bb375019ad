#include <math.h>

#include "analysis/heater_size.h"
#include "commands/size/answer.h"

static const double times[SIZE_CELL_LOADS] = {0.5, 1, 2};
static const double inches[SIZE_CELL_PLATES] = {0.125, 0.25, 0.5, 0.75, 1};

static int heat_of(const scenario *s, double limit_s, const boil_load *l, double *heat_W)
{
    size_case c;
    boil_run_options o = boil_run_options_default();
    int result = size_case_one(s, limit_s, l, &c);
    if (result == BOIL_OK)
        result = boil_heater_size_for_recovery(&s->plant, &c.schedule, &o, limit_s, 0.002, heat_W);
    size_case_free(&c);
    if (result != BOIL_NO_ROOT && result != BOIL_OUT_OF_RANGE)
        return result;
    *heat_W = (double)NAN;
    return BOIL_OK;
}

int size_cells_of(const scenario *s, double limit_s, const quantity *heaviness, size_cells *out)
{
    *out = (size_cells){.scenario = s, .limit_s = limit_s};
    for (int i = 0; i < SIZE_CELL_LOADS; i++)
        for (int k = 0; k < SIZE_CELL_PLATES; k++) {
            size_cell *c = &out->cells[out->count++];
            c->plate_m = unit_to_si(DIM_LENGTH, "in", inches[k]);
            boil_load l = size_case_plate(s, heaviness, c->plate_m);
            l.mass_kg = c->load_kg = times[i] * l.mass_kg;
            int result = heat_of(s, limit_s, &l, &c->heat_W);
            if (result != BOIL_OK)
                return result;
        }
    return BOIL_OK;
}
