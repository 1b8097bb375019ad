#include "commands/size/answer.h"

#include <math.h>

static const double precision = 0.002;

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

boil_outcome size_answer_of(const size_case *c, size_answer *out)
{
    out->size = c;
    return boil_heater_window_of(&c->scenario->plant, &c->schedule, &c->run, c->limit_s, &out->heats);
}

int size_heaviest_of(const size_case *c, size_heaviest *out)
{
    *out = (size_heaviest){.size = c};
    int result = boil_load_size_heaviest(&c->scenario->plant, &c->schedule, &c->run, c->limit_s, &out->times);
    if (!is_no(result))
        return result;
    out->times = 0;
    return BOIL_OK;
}

static int prove(const boil_plant *watered, size_interval *i)
{
    boil_schedule s;
    int result = boil_load_size_repeated(&i->size->load, i->interval_s, i->size->limit_s, &s);
    if (result == BOIL_OK)
        result = boil_run(watered, &s, &i->size->run, &i->proof);
    boil_schedule_free(&s);
    return result;
}

int size_interval_of(const size_case *c, size_interval *out)
{
    boil_plant watered;
    *out = (size_interval){.size = c};
    int result = boil_load_size_watered(&c->scenario->plant, &watered);
    if (result == BOIL_OK)
        result = boil_load_size_interval(&watered, &c->load, &c->run, c->limit_s, &out->interval_s);
    if (result == BOIL_OK)
        return prove(&watered, out);
    out->interval_s = (double)NAN;
    return is_no(result) ? BOIL_OK : result;
}

void size_interval_free(size_interval *i)
{
    boil_history_free(&i->proof);
}

/* The heat for many loads and plates. */

static const double times[SIZE_CELL_LOADS] = {0.5, 1, 2};
static const double inches[SIZE_CELL_PLATES] = {0.125, 0.25, 0.5, 0.75, 1};

static int heat_of(const scenario *s, double limit_s, const boil_load *l, double *heat_W)
{
    size_case c;
    int result = size_case_one(s, limit_s, l, &c);
    if (result == BOIL_OK)
        result = boil_heater_size_for_recovery(&s->plant, &c.schedule, &c.run, limit_s, precision, heat_W);
    size_case_free(&c);
    if (!is_no(result))
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
