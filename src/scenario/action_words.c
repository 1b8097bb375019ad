#include "scenario/action_words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/format.h"

typedef struct {
    char text[100];
} amount;

static amount amount_of(action_units u, unit_dimension d, double si)
{
    amount t;
    if (u == ACTION_BOTH)
        snprintf(t.text, sizeof t.text, "%s (%s)", format_quantity(UNITS_US, d, si).text,
                 format_quantity(UNITS_SI, d, si).text);
    else
        snprintf(t.text, sizeof t.text, "%s", format_quantity(u == ACTION_US ? UNITS_US : UNITS_SI, d, si).text);
    return t;
}

static amount poured(action_units u, double mass_kg, double temperature_K)
{
    amount b;
    snprintf(b.text, sizeof b.text, "%.46s at %.46s", amount_of(u, DIM_MASS, mass_kg).text,
             amount_of(u, DIM_TEMPERATURE, temperature_K).text);
    return b;
}

/* Until when, or for how long where the clock would be that of one load only. */
static amount stay(const boil_load *l, const double *time_s)
{
    amount t = {"in until lifted"};
    if (isfinite(l->immersed_s) && time_s != NULL)
        snprintf(t.text, sizeof t.text, "out at %s", format_clock(*time_s, l->immersed_s).text);
    else if (isfinite(l->immersed_s))
        snprintf(t.text, sizeof t.text, "in for %s", format_duration(l->immersed_s).text);
    return t;
}

/* `time_s`: of the wall clock; NULL: any. */
static void load_details(action_units u, const boil_load *l, const double *time_s, char *out, size_t size)
{
    char basket[120] = "", drag_out[120] = "";
    if (l->basket_kg > 0)
        snprintf(basket, sizeof basket, ", basket %s", amount_of(u, DIM_MASS, l->basket_kg).text);
    if (l->drag_out_kg_m2 >= 0)
        snprintf(drag_out, sizeof drag_out, ", drag-out %s",
                 amount_of(u, DIM_MASS, l->drag_out_kg_m2 * boil_load_wetted(l)).text);
    snprintf(out, size, "at %s, %s%s%s", amount_of(u, DIM_TEMPERATURE, l->temperature_K).text, stay(l, time_s).text, basket,
             drag_out);
}

static void salts_details(action_units u, const scenario *s, const boil_action_salts *a, char *out, size_t size)
{
    int n = snprintf(out, size, "%s", poured(u, a->mass_kg, a->temperature_K).text);
    if (memcmp(a->blend, s->plant.charge.blend, sizeof a->blend) != 0)
        snprintf(out + n, size - (size_t)n, ", %.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * a->blend[BOIL_NAOH],
                 100 * a->blend[BOIL_NANO3], 100 * a->blend[BOIL_NANO2]);
}

static action_words details(const scenario *s, size_t action, action_units u, const double *time_s)
{
    action_words w = {""};
    const boil_action *a = &s->schedule.actions[action];
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        load_details(u, &a->is.load, time_s, w.text, sizeof w.text);
        break;
    case BOIL_ACTION_WATER:
        snprintf(w.text, sizeof w.text, "%s", poured(u, a->is.water.mass_kg, a->is.water.temperature_K).text);
        break;
    case BOIL_ACTION_SALTS:
        salts_details(u, s, &a->is.salts, w.text, sizeof w.text);
        break;
    case BOIL_ACTION_LIQUID:
        snprintf(w.text, sizeof w.text, "%s, %.1f %% salts", poured(u, a->is.liquid.mass_kg, a->is.liquid.temperature_K).text,
                 100 * a->is.liquid.salt_fraction);
        break;
    case BOIL_ACTION_LIFT:
    case BOIL_ACTION_HEAT:
    case BOIL_ACTION_MIXER:
    case BOIL_ACTION_LID:
    case BOIL_ACTION_EXHAUST:
        break;
    }
    return w;
}

action_words action_details(const scenario *s, size_t action, action_units u)
{
    double time_s = s->start_s + s->schedule.actions[action].time_s;
    return details(s, action, u, &time_s);
}

action_words action_details_of_any(const scenario *s, size_t action, action_units u)
{
    return details(s, action, u, NULL);
}
