#include "analysis/correct.h"

#include <math.h>

#include "analysis/correct_parts.h"
#include "analysis/steady_state.h"
#include "case/checks.h"

boil_load boil_correct_next_load(const boil_plant *p, const boil_schedule *s)
{
    const boil_load *heaviest = NULL;
    if (p == NULL || s == NULL)
        return boil_load_default();
    for (size_t i = 0; i < s->count; i++) {
        const boil_load *l = &s->actions[i].is.load;
        if (s->actions[i].kind == BOIL_ACTION_LOAD &&
            (heaviest == NULL || l->mass_kg + l->basket_kg > heaviest->mass_kg + heaviest->basket_kg))
            heaviest = l;
    }
    if (heaviest != NULL) {
        boil_load next = *heaviest;
        next.latest_s = 0; /* of a clock that is not that of the correction */
        return next;
    }
    boil_load plate = boil_load_default();
    plate.mass_kg = boil_plant_usual_load(p);
    plate.size_m = 6.35e-3;
    plate.temperature_K = p->ambient.temperature_K;
    plate.immersed_s = 20 * 60;
    return plate;
}

/* What has to be bailed out in all for the level wanted, where there is too much salt for it. */
static void find_bail_to_wanted(boil_correction *a, double area_m2)
{
    double over = 1 - a->wanted_level_m / a->unbailed_level_m;
    if (a->end_still_m > a->wanted_level_m + BOIL_CORRECT_LEVEL_M)
        a->bail_to_wanted_m3 = over * area_m2 * a->still_level_m;
}

/* What a bath that was bailed out has lost while it cooled and came back is lost whatever it read. */
static void find_uncertainty(boil_correct_work *c)
{
    boil_correction *a = c->a;
    bool whole = a->bail == BOIL_BAIL_NOTHING;
    double level_m = fmin(a->wanted_level_m, whole && !(a->lowered_from_m > 0) ? a->most_level_m : a->amounts.level_m);
    double still_m = whole ? a->still_level_m : c->left * a->still_level_m;
    a->amounts_low = boil_correct_work_amounts_if(c, a->salt_fraction_low, still_m, level_m);
    a->amounts_high = boil_correct_work_amounts_if(c, a->salt_fraction_high, still_m, level_m);
    a->amounts_low.water_kg += c->lost_kg;
    a->amounts_high.water_kg += c->lost_kg;
}

static boil_outcome describe_end(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_plant then = a->start;
    boil_row calm;
    then.charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    then.charge.value = a->end_K;
    then.tank.level_m = a->end_still_m;
    boil_outcome outcome = boil_steady_state_first_row(&then, &c->options, &calm);
    if (outcome == BOIL_OK)
        outcome = boil_correct_work_load_in(c, a->end_still_m, &a->freeboard_loaded_m);
    find_uncertainty(c);
    find_bail_to_wanted(a, c->area_m2);
    a->end_boiling_m = calm.level_m;
    a->end_loaded_m = a->start.tank.depth_m - a->freeboard_loaded_m;
    return outcome;
}

static bool is_no_bath(boil_outcome outcome)
{
    return outcome == BOIL_OUT_OF_RANGE || outcome == BOIL_NO_ROOT;
}

static boil_outcome ended(boil_correction *a, boil_correct_end end)
{
    a->end = end;
    return BOIL_OK;
}

static bool is_correct_case(const boil_correct_case *c)
{
    return isfinite(c->reads_K) && c->uncertain_K >= 0 && isfinite(c->uncertain_K) && c->level_m > 0 && isfinite(c->level_m) &&
           c->liquid_fraction >= 0 && c->liquid_fraction < 0.9 && isfinite(c->added_K) && isfinite(c->liquid_K) &&
           boil_load_problem(&c->next_load) == NULL;
}

boil_outcome boil_correct(const boil_plant *p, const boil_correct_case *asked, const boil_run_options *o, boil_correction *out)
{
    if (out == NULL || asked == NULL || !boil_check_plant(p) || !boil_check_options(o) || !is_correct_case(asked))
        return BOIL_BAD_INPUT;
    boil_correct_work c = {.a = out, .options = *o, .left = 1, .area_m2 = boil_tank_area(&p->tank)};
    c.air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    *out = (boil_correction){.asked = *asked, .most_level_m = (double)NAN, .crystals_from_K = (double)NAN};
    if (asked->liquid_fraction > 0 && asked->liquid_K > asked->reads_K)
        return ended(out, BOIL_CORRECT_HOT_LIQUID);
    boil_outcome outcome = boil_correct_work_reading(&c, p);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_BATH);
    if (outcome != BOIL_OK || out->end != BOIL_CORRECT_DONE)
        return outcome;
    outcome = boil_correct_work_find_freeboard(&c);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_FREEBOARD);
    if (outcome != BOIL_OK)
        return outcome;
    boil_correct_work_find_amounts(&c);
    outcome = boil_correct_work_make_plan(&c);
    return outcome == BOIL_OK && out->end == BOIL_CORRECT_DONE ? describe_end(&c) : outcome;
}
