#include "commands/size/answer.h"

#include <math.h>

#include "analysis/heater_size.h"
#include "base/threads.h"

static const double precision = 0.002, beyond = 1.01; /* one per cent, as the texts say */

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

boil_outcome size_answer_of(const size_case *c, size_answer *out)
{
    out->size = c;
    return boil_heater_window_of(&c->scenario->plant, &c->schedule, &c->run, c->limit_s, &out->heats);
}

boil_outcome size_opening_of(size_answer *a)
{
    const size_case *c = a->size;
    const boil_plant *p = &c->scenario->plant;
    boil_outcome by_load = BOIL_OK, by_area = BOIL_OK;
    /* Side by side: nothing takes as long, and someone waits. */
    threads_create(2);
#pragma omp parallel sections num_threads(2)
    {
#pragma omp section
        by_load = boil_heater_window_opening_load(p, &c->schedule, &c->run, c->limit_s, &a->heats);
#pragma omp section
        by_area = boil_heater_window_opening_area(p, &c->schedule, &c->run, c->limit_s, &a->heats);
    }
    return by_load != BOIL_OK ? by_load : by_area;
}

int size_heaviest_of(const size_case *c, size_heaviest *out)
{
    const boil_plant *p = &c->scenario->plant;
    *out = (size_heaviest){.size = c};
    int result = boil_load_size_heaviest(p, &c->schedule, &c->run, c->limit_s, &out->times);
    if (result == BOIL_OK)
        result = boil_load_size_holds(p, &c->schedule, &c->run, c->limit_s, out->times, &out->at);
    if (result == BOIL_OK)
        result = boil_load_size_holds(p, &c->schedule, &c->run, c->limit_s, beyond * out->times, &out->beyond);
    if (!is_no(result))
        return result;
    out->times = 0;
    result = boil_load_size_holds(p, &c->schedule, &c->run, c->limit_s, BOIL_LOAD_SIZE_LIGHTEST, &out->at);
    return result == BOIL_NO_MEMORY ? result : BOIL_OK;
}

static int prove(const boil_plant *watered, size_interval *i)
{
    const size_case *c = i->size;
    boil_run_options grave = c->run;
    boil_schedule s;
    grave.closures = BOIL_CLOSURES_GRAVE;
    int result = boil_load_size_repeated(&c->load, i->interval_s, c->limit_s, &s);
    if (result == BOIL_OK)
        result = boil_run(watered, &s, &grave, &i->proof);
    boil_schedule_free(&s);
    if (result == BOIL_OK)
        result = boil_load_size_interval_holds(watered, &c->load, &c->run, c->limit_s, i->interval_s, &i->at);
    if (result == BOIL_OK)
        result = boil_load_size_interval_holds(watered, &c->load, &c->run, c->limit_s, i->interval_s / beyond, &i->beyond);
    return result;
}

/* What stands in the way of every interval: one load alone shows it, or the longest. */
static int show_none(const boil_plant *watered, size_interval *i)
{
    const size_case *c = i->size;
    i->interval_s = (double)NAN;
    int result = boil_load_size_alone(watered, &c->load, &c->run, c->limit_s, &i->at);
    if (result == BOIL_OK && i->at.breaks == 0)
        result = boil_load_size_interval_holds(watered, &c->load, &c->run, c->limit_s, BOIL_LOAD_SIZE_LONGEST, &i->at);
    return result == BOIL_NO_MEMORY ? result : BOIL_OK;
}

int size_interval_of(const size_case *c, size_interval *out)
{
    boil_plant watered;
    *out = (size_interval){.size = c, .soonest_s = boil_load_size_soonest(&c->plant, &c->load)};
    int result = boil_load_size_watered(&c->plant, &watered);
    if (result == BOIL_OK)
        result = boil_load_size_interval(&watered, &c->load, &c->run, c->limit_s, &out->interval_s);
    if (result == BOIL_OK)
        return prove(&watered, out);
    return is_no(result) ? show_none(&watered, out) : result;
}

void size_interval_free(size_interval *i)
{
    boil_history_free(&i->proof);
}

int size_held_of(const size_case *c, const boil_plant *p, double heat_W, boil_holding *at)
{
    boil_schedule held;
    int result = boil_holding_schedule(p, &c->schedule, &held);
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, &held, c->run, c->limit_s, false, &own};
    if (result == BOIL_OK)
        result = boil_holding_by_all(&of, heat_W, at);
    boil_simulation_free(own);
    boil_schedule_free(&held);
    return result;
}

int size_need_of(const size_case *c, double *heat_W, boil_holding *at)
{
    const boil_plant *p = &c->scenario->plant;
    double need_W;
    *heat_W = (double)NAN;
    *at = (boil_holding){BOIL_BREAKS_RECOVERY, (double)NAN, (double)NAN, (double)NAN, (double)NAN};
    int result = boil_heater_size_for_recovery(p, &c->schedule, &c->run, c->limit_s, precision, &need_W);
    if (result != BOIL_OK)
        return is_no(result) ? BOIL_OK : result;
    *heat_W = boil_heater_rounded_up(need_W);
    return size_held_of(c, p, *heat_W, at);
}

bool size_is_beyond(const boil_window_end *e, double heat_W)
{
    return boil_window_end_shut(e) || (e->rim == BOIL_RIM_AT && e->heat_W < heat_W);
}

bool size_is_cliff(double recovery_s, double limit_s)
{
    const double far = 1.25; /* judgement: a limit is overshot by some per cent on any slope */
    return !(recovery_s <= far * limit_s);
}

/* The heat for many loads and plates. */

static const double times[SIZE_CELL_LOADS] = {0.5, 1, 2};
static const double inches[SIZE_CELL_PLATES] = {0.125, 0.25, 0.5, 0.75, 1};

static int heat_of(const scenario *s, double limit_s, const boil_load *l, size_cell *cell)
{
    size_case c;
    int result = size_case_one(s, limit_s, l, &c);
    if (result == BOIL_OK)
        result = size_need_of(&c, &cell->heat_W, &cell->at);
    size_case_free(&c);
    cell->holds = result == BOIL_OK && cell->at.breaks == 0;
    return result;
}

int size_cells_of(const scenario *s, double limit_s, const quantity *heaviness, size_cells *out)
{
    double thin_m = unit_to_si(DIM_LENGTH, "in", inches[0]);
    *out = (size_cells){.scenario = s, .limit_s = limit_s, .parts_K = size_case_plate(s, heaviness, thin_m).temperature_K};
    for (int i = 0; i < SIZE_CELL_LOADS; i++)
        for (int k = 0; k < SIZE_CELL_PLATES; k++) {
            size_cell *c = &out->cells[out->count++];
            c->plate_m = unit_to_si(DIM_LENGTH, "in", inches[k]);
            quantity heavy = {.dimension = DIM_MASS, .si = times[i] * size_case_plate(s, heaviness, c->plate_m).mass_kg};
            boil_load l = size_case_plate(s, &heavy, c->plate_m);
            c->load_kg = l.mass_kg;
            int result = heat_of(s, limit_s, &l, c);
            if (result != BOIL_OK)
                return result;
        }
    return BOIL_OK;
}
