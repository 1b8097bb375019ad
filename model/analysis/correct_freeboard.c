#include <math.h>

#include "analysis/correct_parts.h"

/* When the next load goes into the bath it is judged by, and how long that is followed: the wave and what steam the water
   it carries in makes are over by then. */
#define LOAD_AFTER_S 5
#define LOAD_FOLLOWED_S 30

boil_outcome boil_correct_loaded(const boil_correction *a, double still_level_m, boil_plant *plant, boil_schedule *out)
{
    boil_action load = {.kind = BOIL_ACTION_LOAD, .time_s = LOAD_AFTER_S, .is.load = a->asked.next_load};
    *plant = a->start;
    plant->charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    plant->charge.value = a->set_point_K;
    plant->tank.level_m = still_level_m;
    boil_schedule_init(out, LOAD_AFTER_S + LOAD_FOLLOWED_S + load.is.load.lowering_s);
    return boil_schedule_add(out, &load);
}

boil_outcome boil_correct_work_load_in(const boil_correct_work *c, double still_level_m, double *freeboard_m)
{
    boil_plant plant;
    boil_schedule s;
    boil_history h;
    boil_run_options fast = c->options;
    fast.closures = BOIL_CLOSURES_GRAVE;
    boil_outcome outcome = boil_correct_loaded(c->a, still_level_m, &plant, &s);
    if (outcome == BOIL_OK && (outcome = boil_run_unchecked(&plant, &s, &fast, &h)) == BOIL_OK) {
        *freeboard_m = h.summary.freeboard_min_m.value;
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

/* The loaded surface stands a factor above the still one that hardly depends on the level: a few runs find the level to a
   twentieth of a millimetre, from the lower side. */
boil_outcome boil_correct_work_find_freeboard(boil_correct_work *c)
{
    const boil_tank *t = &c->a->start.tank;
    double limit_m = c->a->start.limits.freeboard_m, highest_m = t->depth_m - limit_m, aim_m = highest_m - 2e-5;
    double level_m = fmin(t->level_m, 0.9 * highest_m);
    for (int i = 0; i < 20 && level_m > 0.02; i++) {
        double freeboard_m = 0;
        boil_outcome outcome = boil_correct_work_load_in(c, level_m, &freeboard_m);
        if (outcome != BOIL_OK)
            return outcome;
        if (freeboard_m >= limit_m && freeboard_m < limit_m + 5e-5) {
            c->a->most_level_m = level_m;
            return BOIL_OK;
        }
        level_m *= aim_m / (t->depth_m - freeboard_m);
    }
    return BOIL_NO_ROOT;
}

/* What to add ----------------------------------------------------------------------------------------------------- */

boil_correct_amounts boil_correct_balance(double fraction, double mass_kg, double wanted_fraction, double wanted_salts_kg,
                                          double liquid_fraction)
{
    boil_correct_amounts m = {.level_m = 0};
    double salts = fraction * mass_kg, missing = wanted_salts_kg - salts;
    if (!(missing > BOIL_CORRECT_WORTH_ADDING * wanted_salts_kg))
        missing = 0;
    if (liquid_fraction > 0)
        m.liquid_kg = missing / liquid_fraction;
    else
        m.salts_kg = missing;
    m.water_kg = (salts + missing) / wanted_fraction - mass_kg - m.salts_kg - m.liquid_kg;
    return m;
}

/* To the level wanted, or where too much salt for it puts the level. */
boil_correct_amounts boil_correct_work_amounts_of(const boil_correct_work *c, double fraction, double mass_kg, double level_m)
{
    double full_kg_m = c->set_density_kg_m3 * c->area_m2;
    boil_correct_amounts m = boil_correct_balance(fraction, mass_kg, c->set_fraction, c->set_fraction * full_kg_m * level_m,
                                                  c->a->asked.liquid_fraction);
    m.level_m = (mass_kg + m.water_kg + m.salts_kg + m.liquid_kg) / full_kg_m;
    return m;
}

/* As a bath of another strength would weigh at the same level: the level was measured, not the mass. */
boil_correct_amounts boil_correct_work_amounts_if(const boil_correct_work *c, double fraction, double still_m, double level_m)
{
    boil_mixture kilogram = boil_mixture_of(c->a->start.charge.blend, fraction);
    double mass = boil_solution_density(&kilogram, c->a->asked.reads_K) * c->area_m2 * still_m;
    return boil_correct_work_amounts_of(c, fraction, mass, level_m);
}

void boil_correct_work_find_amounts(boil_correct_work *c)
{
    boil_correction *a = c->a;
    double level = fmin(a->wanted_level_m, a->most_level_m);
    a->amounts = boil_correct_work_amounts_if(c, a->salt_fraction, a->still_level_m, level);
    a->unbailed_level_m = a->amounts.level_m;
}
