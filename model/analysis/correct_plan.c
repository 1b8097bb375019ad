/* correct_plan.c -- the level to aim at, and what to bail out. Nothing is, where a lower level does without; else the bath
   cools first, with the heat off, and comes back to the boil. */
#include <math.h>
#include <string.h>

#include "analysis/correct_parts.h"
#include "analysis/steady_state.h"
#include "case/grading.h"
#include "properties/solubility.h"

/* Bailed out in such a step, twice as much, and so on to so much of the bath, until a pace is found: judgement. */
#define BAIL_STEP 0.03
#define BAIL_MOST 0.4
#define BAIL_UNDER_K 1.0   /* below the limit of a hot bath: a thermometer's mark */
#define BAIL_M3_S 6.67e-5  /* with a dipper: 4 L a minute, judgement */
#define LOWER_STEP 0.125   /* share of what would be put in that is given up at once, twice as much, and so on; judgement */
#define LONGEST_S 1209600. /* two weeks */

/* A step, or the whole, that leaves too little freeboard. */
static bool lacks_freeboard(const boil_correction *a)
{
    static const char *const ids[] = {"freeboard-low", "overflow", "overflow-still", "salt-slug"};
    const char *found[] = {a->water.pace.limited_id, a->salts.pace.limited_id, a->liquid.pace.limited_id, a->harm_id};
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        for (size_t k = 0; k < sizeof found / sizeof found[0]; k++)
            if (found[k] != NULL && strcmp(found[k], ids[i]) == 0)
                return true;
    return false;
}

static bool does(const boil_correct_work *c, boil_outcome outcome)
{
    return outcome == BOIL_OK && c->a->end == BOIL_CORRECT_DONE;
}

static boil_outcome plan_amounts(boil_correct_work *c)
{
    boil_correction *a = c->a;
    a->end = BOIL_CORRECT_DONE;
    a->harm_id = a->harm = NULL;
    a->boiled_off_kg = 0;
    a->water = a->salts = a->liquid = (boil_correct_step){.mass_kg = 0};
    boil_outcome outcome = boil_correct_work_find_paces(c);
    return does(c, outcome) ? boil_correct_work_prove(c) : outcome;
}

/* A lower level ---------------------------------------------------------------------------------------------------- */

/* The level for which no salts are lacking: it takes only water, or boiling down. */
static double lowest_level(const boil_correct_work *c)
{
    return boil_correct_work_amounts_if(c, c->a->salt_fraction, c->a->still_level_m, 0).level_m;
}

static boil_outcome plan_lower(boil_correct_work *c, double share)
{
    boil_correction *a = c->a;
    double low_m = lowest_level(c), level_m = a->unbailed_level_m - share * (a->unbailed_level_m - low_m);
    a->lowered_from_m = a->unbailed_level_m;
    a->amounts = boil_correct_work_amounts_if(c, a->salt_fraction, a->still_level_m, level_m);
    return plan_amounts(c);
}

/* No lower than it has to be, to half a step; the plan at hand is the one for `lowered`. */
static boil_outcome lower_less(boil_correct_work *c, double too_little, double lowered)
{
    boil_correction best = *c->a;
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && lowered - too_little > 0.75 * LOWER_STEP) {
        double middle = (lowered + too_little) / 2;
        outcome = plan_lower(c, middle);
        bool good = does(c, outcome);
        *(good ? &lowered : &too_little) = middle;
        if (good)
            best = *c->a;
    }
    *c->a = best;
    return outcome;
}

static boil_outcome lower(boil_correct_work *c)
{
    boil_correction *a = c->a;
    double lowered = 0;
    boil_outcome outcome = BOIL_OK;
    if (a->unbailed_level_m - lowest_level(c) < BOIL_CORRECT_LEVEL_M)
        return outcome;
    while (outcome == BOIL_OK && a->end == BOIL_CORRECT_NO_POUR_RATE && lowered < 1) {
        lowered = lowered > 0 ? 2 * lowered : LOWER_STEP;
        outcome = plan_lower(c, lowered);
    }
    return does(c, outcome) ? lower_less(c, lowered == LOWER_STEP ? 0 : lowered / 2, lowered) : outcome;
}

/* Bailed out cold -------------------------------------------------------------------------------------------------- */

static double bail_below_K(void)
{
    return boil_gradings[BOIL_FOUND_BAIL_HOT].from[BOIL_SEVERITY_CAUTION] - BAIL_UNDER_K;
}

/* The whole bath, heat off, until it may be bailed; time_s NaN: not within two weeks. */
static boil_outcome cool_down(boil_correct_work *c)
{
    boil_plant p = c->a->start;
    boil_run_options o = c->options;
    p.tank.level_m = c->a->still_level_m;
    p.heater.dial = 0;
    c->cold.time_s = (double)NAN;
    for (double longest_s = 14400; isnan(c->cold.time_s) && longest_s <= LONGEST_S; longest_s *= 2) {
        boil_schedule nothing;
        boil_history h;
        boil_schedule_init(&nothing, longest_s);
        o.row_interval_s = longest_s / 480;
        boil_outcome outcome = boil_run_unchecked(&p, &nothing, &o, &h);
        if (outcome != BOIL_OK)
            return outcome;
        for (size_t i = 0; i < h.rows_count && isnan(c->cold.time_s); i++)
            if (h.rows[i].temperature_K <= bail_below_K())
                c->cold = h.rows[i];
        boil_history_free(&h);
    }
    return BOIL_OK;
}

/* What is left, cold, until it boils again; NaN where it does not. */
static boil_outcome heat_up(const boil_correct_work *c, boil_plant *p, double *takes_s, double *water_kg)
{
    boil_history h;
    *takes_s = (double)NAN;
    boil_outcome outcome = boil_steady_state_reached(p, &c->options, true, &h);
    if (outcome != BOIL_OK)
        return outcome;
    for (size_t i = 0; i < h.rows_count && isnan(*takes_s); i++)
        if (h.rows[i].boiling) {
            *takes_s = h.rows[i].time_s;
            *water_kg = h.rows[i].water_kg + h.rows[i].layer_kg;
        }
    boil_history_free(&h);
    return BOIL_OK;
}

/* From there on the plan counts: boiling again, of what strength and level. */
static boil_outcome start_again(boil_correct_work *c, double salts_kg, double water_kg)
{
    boil_correction *a = c->a;
    boil_initial_state then;
    a->start.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    a->start.charge.value = salts_kg / (salts_kg + water_kg);
    a->start.charge.temperature_K = 0;
    boil_outcome outcome = boil_plant_initial(&a->start, &then);
    if (outcome == BOIL_OK)
        a->start.tank.level_m = (salts_kg + water_kg) / (then.density_kg_m3 * c->area_m2);
    c->lost_kg = c->left * a->mass_kg - salts_kg - water_kg;
    if (boil_correct_is_nearly_dry(a->start.charge.value))
        a->end = BOIL_CORRECT_NEARLY_DRY;
    return outcome;
}

static void note_bail(boil_correct_work *c, double salts_kg, boil_initial_state *cold, boil_plant *left)
{
    boil_correction *a = c->a;
    double mass = salts_kg + c->cold.water_kg + c->cold.layer_kg, still_m = mass / (cold->density_kg_m3 * c->area_m2);
    left->tank.level_m = c->left * still_m;
    a->crystals_from_K = boil_solubility_crystals_from(&cold->mixture);
    a->cool_s = 60 * ceil(c->cold.time_s / 60);
    a->cold_K = c->cold.temperature_K;
    a->bail_kg = (1 - c->left) * mass;
    a->bail_m3 = (1 - c->left) * still_m * c->area_m2;
    a->relight_s = a->cool_s + 60 * ceil(a->bail_m3 / BAIL_M3_S / 60);
}

/* Heat off, bailed out when it has cooled, heat on, the boil back. */
static boil_outcome bail_cold(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_initial_state cold;
    double salts = a->salt_fraction * a->mass_kg, takes_s, water = 0;
    boil_outcome outcome = c->cold.time_s > 0 || isnan(c->cold.time_s) ? BOIL_OK : cool_down(c);
    if (outcome != BOIL_OK || isnan(c->cold.time_s)) {
        a->end = BOIL_CORRECT_NO_BAILING;
        return outcome;
    }
    boil_plant left = a->start;
    left.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    left.charge.value = salts / (salts + c->cold.water_kg + c->cold.layer_kg);
    left.charge.temperature_K = c->cold.temperature_K;
    outcome = boil_plant_initial(&left, &cold);
    if (outcome != BOIL_OK)
        return outcome;
    note_bail(c, salts, &cold, &left);
    outcome = heat_up(c, &left, &takes_s, &water);
    if (outcome != BOIL_OK || isnan(takes_s)) {
        a->end = BOIL_CORRECT_NO_BAILING;
        return outcome;
    }
    a->back_s = a->relight_s + 60 * ceil(takes_s / 60);
    return start_again(c, c->left * salts, water);
}

/* A plan with so much bailed out that with nothing but water added it would come to a share of what fits. */
static boil_outcome plan_bailed(boil_correct_work *c, double share, boil_bail why)
{
    boil_correction *a = c->a;
    double level_m = share * fmin(a->unbailed_level_m, a->most_level_m);
    a->end = BOIL_CORRECT_DONE;
    a->bail = why;
    a->start.charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    a->start.charge.value = a->asked.reads_K;
    c->left = level_m / a->unbailed_level_m;
    boil_outcome outcome = bail_cold(c);
    if (!does(c, outcome))
        return outcome;
    double mass = c->left * a->mass_kg - c->lost_kg;
    a->amounts = boil_correct_work_amounts_of(c, a->start.charge.value, mass, fmin(level_m, a->wanted_level_m));
    return plan_amounts(c);
}

/* As little more bailed out as will do, to a step; the plan at hand is the one for `bailed`. */
static boil_outcome bail_less(boil_correct_work *c, double too_little, double bailed)
{
    boil_correct_work best = *c;
    boil_correction plan = *c->a;
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && bailed - too_little > 1.5 * BAIL_STEP) {
        double middle = (bailed + too_little) / 2;
        outcome = plan_bailed(c, 1 - middle, plan.bail);
        bool good = does(c, outcome);
        *(good ? &bailed : &too_little) = middle;
        if (good) {
            best = *c;
            plan = *c->a;
        }
    }
    *c = best;
    *c->a = plan;
    return outcome;
}

/* Where the additions leave too little freeboard at any pace, less is left in the tank. */
static boil_outcome bail(boil_correct_work *c, boil_bail why)
{
    boil_correction *a = c->a;
    double bailed = why == BOIL_BAIL_FOR_LOAD ? 0 : BAIL_STEP;
    a->lowered_from_m = 0;
    boil_outcome outcome = plan_bailed(c, 1 - bailed, why);
    while (outcome == BOIL_OK && a->end == BOIL_CORRECT_NO_POUR_RATE && lacks_freeboard(a) && bailed < BAIL_MOST) {
        bailed = bailed > 0 ? 2 * bailed : BAIL_STEP;
        outcome = plan_bailed(c, 1 - bailed, why);
    }
    return does(c, outcome) ? bail_less(c, bailed / 2, bailed) : outcome;
}

boil_outcome boil_correct_work_make_plan(boil_correct_work *c)
{
    boil_correction *a = c->a;
    if (a->amounts.level_m > a->most_level_m * (1 + 1e-9))
        return bail(c, BOIL_BAIL_FOR_LOAD);
    boil_outcome outcome = plan_amounts(c);
    if (outcome != BOIL_OK || a->end != BOIL_CORRECT_NO_POUR_RATE || !lacks_freeboard(a))
        return outcome;
    outcome = lower(c);
    if (outcome != BOIL_OK || a->end != BOIL_CORRECT_NO_POUR_RATE || !lacks_freeboard(a))
        return outcome;
    a->unbailed_level_m = lowest_level(c);
    return bail(c, BOIL_BAIL_FOR_POUR);
}
