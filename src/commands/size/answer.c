#include "commands/size/answer.h"

#include <math.h>

static const double precision = 0.002;

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

/* To four digits of a kilowatt, as it is printed. */
static double rounded_up(double heat_W)
{
    double digit = pow(10, floor(log10(heat_W)) - 3);
    return ceil(heat_W / digit - 1e-9) * digit;
}

static boil_outcome carry_out(const size_case *c, double heat_W, boil_history *h)
{
    boil_plant sized;
    boil_outcome result = boil_heater_size_plant(&c->scenario->plant, heat_W, &sized);
    return result == BOIL_OK ? boil_run(&sized, &c->schedule, &c->run, h) : result;
}

static boil_outcome find_end(const size_case *c, boil_closures closures, double heat_W, size_end *end)
{
    const boil_plant *p = &c->scenario->plant;
    boil_run_options o = c->run;
    o.closures = closures;
    *end = (size_end){SIZE_RIM_AT, (double)NAN, (double)NAN};
    boil_outcome result = boil_heater_size_staying_below(p, &c->schedule, &o, heat_W, &end->from_W);
    if (is_no(result)) {
        end->from_W = (double)NAN;
        return BOIL_OK;
    }
    end->from_W = end->from_W > heat_W ? rounded_up(end->from_W) : heat_W;
    if (result == BOIL_OK)
        result = boil_heater_size_below_rim(p, &c->schedule, &o, end->from_W, &end->heat_W);
    if (is_no(result)) {
        end->rim = result == BOIL_OUT_OF_RANGE ? SIZE_RIM_BEYOND : SIZE_RIM_NEVER;
        return BOIL_OK;
    }
    return result;
}

/* Nothing that opens it is no failure. */
static boil_outcome find_opening(const size_case *c, size_answer *a)
{
    const boil_plant *p = &c->scenario->plant;
    int by_load = boil_load_size_opening_load(p, &c->schedule, &c->run, c->limit_s, &a->opening_load);
    int by_area = boil_load_size_opening_area(p, &c->schedule, &c->run, c->limit_s, &a->opening_area);
    if (by_load == BOIL_NO_ROOT)
        a->opening_load = (double)NAN;
    if (by_area == BOIL_NO_ROOT)
        a->opening_area = (double)NAN;
    return by_load != BOIL_OK && by_load != BOIL_NO_ROOT   ? by_load
           : by_area != BOIL_OK && by_area != BOIL_NO_ROOT ? by_area
                                                           : BOIL_OK;
}

static boil_outcome around_heat(const size_case *c, size_answer *a)
{
    const boil_plant *p = &c->scenario->plant;
    bool fuel = p->heater.source != BOIL_HEAT_STEAM;
    a->input_W = fuel ? a->heat_W / p->heater.efficiency : (double)NAN;
    boil_outcome result = boil_steady_state_at(p, a->heat_W, &a->calm);
    a->own_W = boil_heater_output(&p->heater, 1, a->calm.boiling_point_K);
    if (result == BOIL_OK && boil_steady_state_heat_up(p, &c->run, a->heat_W, &a->heat_up_s) != BOIL_OK)
        a->heat_up_s = (double)NAN; /* such a bath cannot stand cold: no time to tell */
    if (result == BOIL_OK)
        result = carry_out(c, a->heat_W, &a->proof);
    if (result == BOIL_OK)
        result = carry_out(c, 0.99 * a->heat_W, &a->less);
    if (result == BOIL_OK)
        result = find_end(c, BOIL_CLOSURES_LIKELY, a->heat_W, &a->likely);
    if (result == BOIL_OK)
        result = find_end(c, BOIL_CLOSURES_GRAVE, a->heat_W, &a->possible);
    return result == BOIL_OK && size_answer_shut(a) ? find_opening(c, a) : result;
}

boil_outcome size_answer_of(const size_case *c, size_answer *out)
{
    const double none = (double)NAN;
    *out = (size_answer){
        .size = c, .heat_W = none, .input_W = none, .heat_up_s = none, .opening_load = none, .opening_area = none};
    boil_outcome result =
        boil_heater_size_for_recovery(&c->scenario->plant, &c->schedule, &c->run, c->limit_s, precision, &out->heat_W);
    if (is_no(result)) {
        out->found = result == BOIL_OUT_OF_RANGE ? SIZE_BEYOND : SIZE_NONE;
        result = find_opening(c, out);
    } else if (result == BOIL_OK) {
        out->heat_W = rounded_up(out->heat_W);
        result = around_heat(c, out);
    }
    if (result != BOIL_OK)
        size_answer_free(out);
    return result;
}

void size_answer_free(size_answer *a)
{
    boil_history_free(&a->proof);
    boil_history_free(&a->less);
}

bool size_end_shut(const size_end *e)
{
    return isnan(e->from_W);
}

bool size_end_surges(const size_end *e, double heat_W)
{
    return e->from_W > heat_W;
}

bool size_answer_shut(const size_answer *a)
{
    return a->found != SIZE_FOUND || size_end_shut(&a->likely);
}

bool size_answer_never_stops(const size_answer *a)
{
    for (size_t i = 0; i < a->proof.loads_count; i++)
        if (!isnan(a->proof.loads[i].boil_lost_s))
            return false;
    return true;
}

/* How much steel the heat that is there carries. */

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
