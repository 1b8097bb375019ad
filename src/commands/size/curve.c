#include "commands/size/answer.h"

#include <math.h>

#include "analysis/heater_size.h"

/* What is to be seen: both ends of the window with room beyond them, and the heat of the scenario. */
static void set_range(const size_answer *a, double losses_W, size_curve *c)
{
    double need_W = a->found == SIZE_FOUND ? a->heat_W : 2 * losses_W;
    double seen_W = 2 * need_W;
    if (a->found == SIZE_FOUND && a->likely.rim == SIZE_RIM_AT && !size_end_shut(&a->likely))
        seen_W = 1.15 * a->likely.heat_W;
    if (a->own_W > seen_W && a->own_W < 3 * seen_W)
        seen_W = 1.05 * a->own_W;
    c->from_W = fmin(losses_W, 0.9 * need_W);
    c->to_W = fmax(seen_W, 1.3 * need_W);
}

static boil_outcome add(const size_case *s, double heat_W, size_curve *c)
{
    boil_plant sized;
    boil_history h;
    boil_outcome result = boil_heater_size_plant(&s->scenario->plant, heat_W, &sized);
    if (result == BOIL_OK)
        result = boil_run(&sized, &s->schedule, &s->run, &h);
    if (result != BOIL_OK)
        return result;
    size_point *p = &c->points[c->count++];
    bool over = !isnan(h.summary.overflow_s) || !isnan(h.summary.still_overflow_s), whole = h.end == BOIL_RUN_DONE;
    *p = (size_point){heat_W, whole || over ? boil_history_recoveries(&h, s->limit_s).slowest_s : (double)NAN,
                      over    ? SIZE_POINT_OVER
                      : whole ? SIZE_POINT_BELOW
                              : SIZE_POINT_BEYOND};
    boil_history_free(&h);
    return BOIL_OK;
}

boil_outcome size_curve_of(const size_answer *a, size_curve *out)
{
    boil_steady_state calm;
    boil_outcome result = boil_steady_state_at(&a->size->scenario->plant, 0, &calm);
    *out = (size_curve){0};
    if (result != BOIL_OK)
        return result;
    set_range(a, calm.losses_W, out);
    const int even = SIZE_CURVE_POINTS - 1;
    double step = pow(out->to_W / out->from_W, 1.0 / (even - 1)), own_W = a->found == SIZE_FOUND ? a->heat_W : 0;
    for (int i = 0; i < even && result == BOIL_OK; i++) {
        double heat_W = out->from_W * pow(step, i);
        if (own_W > 0 && own_W <= heat_W) {
            result = add(a->size, own_W, out);
            own_W = 0;
        }
        if (result == BOIL_OK)
            result = add(a->size, heat_W, out);
    }
    return result;
}
