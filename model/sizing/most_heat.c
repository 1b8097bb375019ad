#include "sizing/most_heat.h"

#include <math.h>

#include "sizing/turning.h"

/* By the sudden laws, and where those leave enough by the grave ones. */
static boil_outcome least_left(const boil_holding_case *of, double freeboard_m, double heat_W, double *left_m)
{
    static const boil_closures laws[] = {BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_GRAVE};
    boil_outcome outcome = BOIL_OK;
    *left_m = (double)INFINITY;
    for (size_t i = 0; i < 2 && outcome == BOIL_OK && *left_m >= freeboard_m; i++) {
        boil_holding a;
        outcome = boil_holding_by(of, heat_W, laws[i], &a);
        if (outcome == BOIL_OK)
            *left_m = fmin(*left_m, a.freeboard_min_m);
    }
    return outcome;
}

boil_outcome boil_most_heat_leaving(const boil_holding_case *of, double freeboard_m, double least_W, double left_m,
                                    double near_W, double *heat_W)
{
    const double inside = 0.997; /* so much of what the line says, or it would be asked again for a hair */
    double now_m = (double)NAN;
    boil_outcome outcome = least_left(of, freeboard_m, near_W, &now_m);
    for (*heat_W = near_W; outcome == BOIL_OK && *heat_W > least_W && now_m < freeboard_m;) {
        double share = (left_m - freeboard_m) / (left_m - now_m);
        *heat_W = fmax(least_W, inside * (least_W + share * (*heat_W - least_W)));
        outcome = least_left(of, freeboard_m, *heat_W, &now_m);
    }
    return outcome;
}

typedef struct {
    const boil_holding_case *of;
    size_t first;
} asked;

static boil_outcome stays_in_band(void *context, double heat_W, bool *yes)
{
    const unsigned heeded = BOIL_BREAKS_WEAK | BOIL_BREAKS_STRONG | BOIL_BREAKS_KNOWN;
    asked *a = context;
    bool breaks = false;
    boil_outcome outcome = boil_holding_breaks_by_any(a->of, heat_W, BOIL_HOLDING_LAWS, heeded, &a->first, &breaks);
    *yes = !breaks;
    return outcome;
}

boil_outcome boil_most_heat_in_band(const boil_holding_case *of, double least_W, double near_W, double *heat_W)
{
    asked a = {of, 0};
    boil_turning t = {stays_in_band, &a, near_W, least_W, near_W, false, 0.02};
    return boil_turning_find(&t, heat_W);
}
