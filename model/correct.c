#include "correct.h"

#include <math.h>
#include <string.h>

#include "boil.h"

/* Water is left to mix before salts go in, and everything before the end: several mixing times of a gently boiling bath,
   60 to 300 s, judgement. */
#define SETTLE_S 120
/* Salts or water less than this share are the noise of dipstick and thermometer: judgement. */
#define WORTH_ADDING 1e-4
/* When the next load goes into the bath it is judged by, and how long that is followed: the wave and what steam the water it
   carries in makes are over by then. */
#define LOAD_AFTER_S 5
#define LOAD_FOLLOWED_S 30
/* Bailed out in steps of this share of the bath until a pace is found: judgement. */
#define BAIL_STEP 0.03

typedef struct {
    boil_correction *a;
    boil_run_options options;
    boil_conditions air;
    double set_fraction, set_density_kg_m3;
    double area_m2, vent_kg_s; /* what the calm bath gives off */
} correcting;

boil_load boil_correct_next_load(const boil_plant *p, const boil_schedule *s)
{
    const boil_load *heaviest = NULL;
    for (size_t i = 0; i < s->count; i++) {
        const boil_load *l = &s->acts[i].is.load;
        if (s->acts[i].kind == BOIL_ACT_LOAD &&
            (heaviest == NULL || l->mass_kg + l->basket_kg > heaviest->mass_kg + heaviest->basket_kg))
            heaviest = l;
    }
    if (heaviest != NULL)
        return *heaviest;
    boil_load plate = boil_load_default();
    plate.mass_kg = p->limits.load_per_volume_kg_m3 * boil_tank_area(&p->tank) * p->tank.level_m;
    plate.size_m = 6.35e-3;
    plate.temperature_K = p->room.temperature_K;
    plate.immersed_s = 20 * 60;
    return plate;
}

static int add_act(boil_schedule *s, boil_act act, double time_s)
{
    act.time_s = time_s;
    return boil_schedule_add(s, &act);
}

/* What there is --------------------------------------------------------------------------------------------------- */

static int fraction_at(const correcting *c, double boiling_point_K, double *fraction)
{
    return boil_solution_fraction_boiling_at(&c->air, c->a->start.charge.blend, boiling_point_K, fraction);
}

/* An uncertainty that reaches beyond what there can be ends there. */
static double fraction_or(const correcting *c, double boiling_point_K, double otherwise)
{
    double fraction;
    return fraction_at(c, boiling_point_K, &fraction) == BOIL_OK ? fraction : otherwise;
}

/* As it boils with nothing going in. */
static int calm_of(const correcting *c, const boil_plant *p, boil_row *calm)
{
    boil_schedule nothing;
    boil_history h;
    boil_run_options o = c->options;
    boil_schedule_init(&nothing, 1);
    o.row_interval_s = 1;
    int outcome = boil_run(p, &nothing, &o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *calm = h.rows[0];
    boil_history_free(&h);
    return BOIL_OK;
}

/* A boiling surface stands a factor above the still one that hardly depends on the level. */
static int take_swell_out(correcting *c)
{
    boil_correction *a = c->a;
    double *level = &a->start.tank.level_m;
    boil_row calm;
    for (int i = 0; i < 4 && a->asked.level_boiling; i++) {
        int outcome = calm_of(c, &a->start, &calm);
        if (outcome != BOIL_OK)
            return outcome;
        *level *= a->asked.level_m / calm.level_m;
    }
    a->still_level_m = *level;
    a->swell_m = a->asked.level_m - *level;
    return BOIL_OK;
}

/* The plant as it stands, boiling at the reading. */
static void set_start(correcting *c, const boil_plant *p, const boil_correct_case *asked)
{
    boil_plant *start = &c->a->start;
    *start = *p;
    start->control.mode = BOIL_CONTROL_NONE;
    start->charge.basis = BOIL_BY_BOILING_POINT;
    start->charge.value = asked->reads_K;
    start->charge.temperature_K = 0;
    start->tank.level_m = asked->level_m;
}

static int look_at_bath(correcting *c)
{
    boil_correction *a = c->a;
    boil_charge_state there;
    boil_row calm;
    int outcome = take_swell_out(c);
    if (outcome == BOIL_OK)
        outcome = boil_plant_charge(&a->start, &there);
    if (outcome == BOIL_OK)
        outcome = calm_of(c, &a->start, &calm);
    if (outcome != BOIL_OK)
        return outcome;
    a->salt_fraction = there.salt_fraction;
    a->salt_fraction_low = fraction_or(c, a->asked.reads_K - a->asked.uncertain_K, 0);
    a->salt_fraction_high = fraction_or(c, a->asked.reads_K + a->asked.uncertain_K, there.salt_fraction);
    a->strength_kg_m3 = boil_solution_strength(&c->air, &there.mixture);
    a->mass_kg = boil_mixture_mass(&there.mixture);
    a->freeboard_now_m = calm.freeboard_m;
    c->vent_kg_s = calm.vented_kg_s;
    if (!(calm.boiling && calm.steam_kg_s > 0))
        a->end = BOIL_CORRECT_NO_BOIL;
    return BOIL_OK;
}

static int set_wanted(correcting *c, const boil_plant *p)
{
    boil_correction *a = c->a;
    a->set_point_stated = p->charge.basis == BOIL_BY_BOILING_POINT;
    a->set_point_K = a->set_point_stated ? p->charge.value
                                         : (p->limits.boiling_point_low_K + p->limits.boiling_point_high_K) / 2;
    a->wanted_level_m = p->tank.level_m;
    int outcome = fraction_at(c, a->set_point_K, &c->set_fraction);
    if (outcome != BOIL_OK)
        return outcome;
    boil_mixture kilogram = boil_mixture_of(p->charge.blend, c->set_fraction);
    c->set_density_kg_m3 = boil_solution_density(&kilogram, a->set_point_K);
    return BOIL_OK;
}

/* Whether it fits ------------------------------------------------------------------------------------------------- */

int boil_correct_loaded(const boil_correction *a, double still_level_m, boil_plant *plant, boil_schedule *out)
{
    boil_act load = {.kind = BOIL_ACT_LOAD, .is.load = a->asked.next_load};
    *plant = a->start;
    plant->charge.value = a->set_point_K;
    plant->tank.level_m = still_level_m;
    boil_schedule_init(out, LOAD_AFTER_S + LOAD_FOLLOWED_S + load.is.load.lowering_s);
    return add_act(out, load, LOAD_AFTER_S);
}

static int load_in(const correcting *c, double still_level_m, double *freeboard_m)
{
    boil_plant plant;
    boil_schedule s;
    boil_history h;
    boil_run_options fast = c->options;
    fast.mixing_time_factor = BOIL_PACE_FAST_MIXING;
    int outcome = boil_correct_loaded(c->a, still_level_m, &plant, &s);
    if (outcome == BOIL_OK && (outcome = boil_run(&plant, &s, &fast, &h)) == BOIL_OK) {
        *freeboard_m = h.summary.freeboard_min_m.value;
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

/* The loaded surface stands a factor above the still one that hardly depends on the level: a few runs find the level to a
   twentieth of a millimetre, from the lower side. */
static int find_most_level(correcting *c)
{
    const boil_tank *t = &c->a->start.tank;
    double limit_m = c->a->start.limits.freeboard_m, highest_m = t->depth_m - limit_m, aim_m = highest_m - 2e-5;
    double level_m = fmin(t->level_m, 0.9 * highest_m);
    for (int i = 0; i < 20 && level_m > 0.02; i++) {
        double freeboard_m = 0;
        int outcome = load_in(c, level_m, &freeboard_m);
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
    if (!(missing > WORTH_ADDING * wanted_salts_kg))
        missing = 0;
    if (liquid_fraction > 0)
        m.liquid_kg = missing / liquid_fraction;
    else
        m.salts_kg = missing;
    m.water_kg = (salts + missing) / wanted_fraction - mass_kg - m.salts_kg - m.liquid_kg;
    return m;
}

/* To the level wanted, or where too much salt for it puts the level. */
static boil_correct_amounts amounts_of(const correcting *c, double fraction, double mass_kg, double level_m)
{
    double full_kg_m = c->set_density_kg_m3 * c->area_m2;
    boil_correct_amounts m = boil_correct_balance(fraction, mass_kg, c->set_fraction, c->set_fraction * full_kg_m * level_m,
                                                  c->a->asked.liquid_fraction);
    m.level_m = (mass_kg + m.water_kg + m.salts_kg + m.liquid_kg) / full_kg_m;
    return m;
}

/* As a bath of another strength would weigh at the same level: the level was measured, not the mass. */
static boil_correct_amounts amounts_if(const correcting *c, double fraction, double level_m)
{
    const boil_plant *start = &c->a->start;
    boil_mixture kilogram = boil_mixture_of(start->charge.blend, fraction);
    double mass = boil_solution_density(&kilogram, c->a->asked.reads_K) * c->area_m2 * start->tank.level_m;
    return amounts_of(c, fraction, mass, level_m);
}

/* So much is bailed out that the level is this in the end, with nothing but water added. */
static void bail_to(correcting *c, double level_m, boil_bail why)
{
    boil_correction *a = c->a;
    double left = level_m / a->unbailed_level_m;
    a->bail = why;
    a->bail_kg = (1 - left) * a->mass_kg;
    a->bail_m3 = (1 - left) * c->area_m2 * a->still_level_m;
    a->start.tank.level_m = a->still_level_m * left;
    a->amounts = amounts_if(c, a->salt_fraction, fmin(level_m, a->wanted_level_m));
}

static void find_amounts(correcting *c)
{
    boil_correction *a = c->a;
    double level = fmin(a->wanted_level_m, a->most_level_m);
    a->amounts = amounts_if(c, a->salt_fraction, level);
    a->unbailed_level_m = a->amounts.level_m;
    if (a->amounts.level_m > a->most_level_m * (1 + 1e-9))
        bail_to(c, a->most_level_m, BOIL_BAIL_FOR_LOAD);
}

/* The plan -------------------------------------------------------------------------------------------------------- */

static boil_act act_of(const boil_correction *a, boil_act_kind kind, double mass_kg)
{
    boil_act act = {.kind = kind};
    if (kind == BOIL_ACT_WATER)
        act.is.water.temperature_K = a->asked.added_K;
    else if (kind == BOIL_ACT_SALTS)
        act.is.salts.temperature_K = a->asked.added_K;
    else
        act.is.liquid = (boil_liquid_act){.temperature_K = a->asked.added_K, .salt_fraction = a->asked.liquid_fraction};
    for (int i = 0; i < BOIL_SALTS; i++)
        (kind == BOIL_ACT_SALTS ? act.is.salts.blend : act.is.liquid.blend)[i] =
            kind == BOIL_ACT_WATER ? 0 : a->start.charge.blend[i];
    boil_act_pour(&act, mass_kg, boil_pace_by_hand(kind));
    return act;
}

static bool adds(const boil_correction *a)
{
    return a->water.mass_kg + a->salts.mass_kg + a->liquid.mass_kg > 0;
}

static int add_step(const boil_correction *a, boil_act_kind kind, const boil_correct_step *step, boil_schedule *s)
{
    if (!(step->mass_kg > 0))
        return BOIL_OK;
    boil_act act = act_of(a, kind, step->mass_kg);
    boil_act_pour(&act, step->mass_kg, step->mass_kg / step->over_s);
    return add_act(s, act, step->start_s);
}

int boil_correct_schedule(const boil_correction *a, boil_schedule *out)
{
    boil_schedule_init(out, a->done_s);
    int outcome = add_step(a, BOIL_ACT_WATER, &a->water, out);
    if (outcome == BOIL_OK)
        outcome = add_step(a, BOIL_ACT_SALTS, &a->salts, out);
    if (outcome == BOIL_OK)
        outcome = add_step(a, BOIL_ACT_LIQUID, &a->liquid, out);
    return outcome;
}

/* Where a step begins and how long it takes; the end of it. */
static double placed(boil_correct_step *step, double start_s)
{
    step->start_s = start_s;
    step->over_s = step->mass_kg > 0 ? step->mass_kg / step->pace.rate_kg_s : 0;
    return start_s + step->over_s;
}

/* Water or the boil-down, a rest, the make-up, a hold; done on the minute. */
static void place_steps(boil_correction *a, double hold_s)
{
    boil_correct_step *makeup = a->asked.liquid_fraction > 0 ? &a->liquid : &a->salts;
    double end = a->water.mass_kg > 0 ? placed(&a->water, 0) : a->boil_down_s;
    if (makeup->mass_kg > 0)
        end = placed(makeup, a->water.mass_kg > 0 ? end + SETTLE_S : end);
    a->done_s = 60 * (adds(a) ? ceil((end + hold_s) / 60) : round(end / 60));
}

static int run_plan(const correcting *c, double mixing, double rows_s, boil_history *h)
{
    boil_schedule s;
    boil_run_options o = c->options;
    o.mixing_time_factor = mixing;
    o.row_interval_s = rows_s;
    int outcome = boil_correct_schedule(c->a, &s);
    if (outcome == BOIL_OK)
        outcome = boil_run(&c->a->start, &s, &o, h);
    boil_schedule_free(&s);
    return outcome;
}

/* The bath in which the make-up begins: the water is in, or has boiled down. */
static boil_plant before_makeup(const correcting *c)
{
    boil_plant p = c->a->start;
    boil_charge_state now, then;
    if (boil_plant_charge(&p, &now) != BOIL_OK)
        return p;
    double salts = now.salt_fraction * boil_mixture_mass(&now.mixture), water = now.mixture.water + c->a->amounts.water_kg;
    p.charge.basis = BOIL_BY_SALT_FRACTION;
    p.charge.value = salts / (salts + water);
    if (boil_plant_charge(&p, &then) == BOIL_OK)
        p.tank.level_m = (salts + water) / (then.density_kg_m3 * c->area_m2);
    return p;
}

static int find_pace(const correcting *c, const boil_plant *p, boil_act_kind kind, boil_correct_step *step)
{
    boil_act act = act_of(c->a, kind, step->mass_kg);
    int outcome = boil_pace_of(p, &act, kind == BOIL_ACT_WATER ? c->vent_kg_s : 0, &c->options, &step->pace);
    if (outcome == BOIL_NO_ROOT)
        c->a->end = BOIL_CORRECT_NO_PACE;
    return outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

static int find_makeup_pace(correcting *c)
{
    boil_correction *a = c->a;
    bool liquid = a->asked.liquid_fraction > 0;
    boil_correct_step *step = liquid ? &a->liquid : &a->salts;
    step->mass_kg = liquid ? a->amounts.liquid_kg : a->amounts.salts_kg;
    if (!(step->mass_kg > 0))
        return BOIL_OK;
    boil_plant p = before_makeup(c);
    return find_pace(c, &p, liquid ? BOIL_ACT_LIQUID : BOIL_ACT_SALTS, step);
}

/* Water is what is left over after the time that the make-up takes; below nothing, that boils down. */
static int set_water(correcting *c, double water_kg)
{
    boil_correction *a = c->a;
    bool searched = a->water.pace.rate_kg_s > 0;
    a->water.mass_kg = fmax(0, water_kg);
    a->boil_down_s = fmax(0, -water_kg / c->vent_kg_s);
    return a->water.mass_kg > 0 && !searched ? find_pace(c, &a->start, BOIL_ACT_WATER, &a->water) : BOIL_OK;
}

static int find_paces(correcting *c)
{
    boil_correction *a = c->a;
    int outcome = find_makeup_pace(c);
    if (outcome != BOIL_OK || a->end != BOIL_CORRECT_DONE)
        return outcome;
    double takes_s = placed(&a->salts, 0) + placed(&a->liquid, 0);
    if (!(takes_s > 0) && fabs(a->amounts.water_kg) < WORTH_ADDING * a->mass_kg)
        return BOIL_OK;
    double hold_s = takes_s > 0 || a->amounts.water_kg > 0 ? 2 * SETTLE_S : 0;
    return set_water(c, a->amounts.water_kg + (takes_s + hold_s) * c->vent_kg_s);
}

/* When all is mixed in and dissolved but two thousandths; NaN: not in this run. */
static double settled_s(const boil_correction *a, const boil_history *h)
{
    double poured = fmax(a->water.start_s + a->water.over_s,
                         fmax(a->salts.start_s + a->salts.over_s, a->liquid.start_s + a->liquid.over_s));
    for (size_t i = 0; i < h->rows_count; i++) {
        const boil_row *r = &h->rows[i];
        if (r->time_s >= poured && r->boiling && r->undissolved_kg <= 0.002 * a->salts.mass_kg &&
            r->layer_kg <= 0.002 * a->water.mass_kg)
            return r->time_s - poured;
    }
    return (double)NAN;
}

static int find_hold(correcting *c, double *hold_s)
{
    const double longest_s = 4 * 3600;
    double needed = (double)NAN;
    for (*hold_s = 240; isnan(needed) && *hold_s <= longest_s; *hold_s *= 2) {
        boil_history h;
        place_steps(c->a, *hold_s);
        int outcome = run_plan(c, 1, 10, &h);
        if (outcome != BOIL_OK)
            return outcome;
        needed = settled_s(c->a, &h);
        boil_history_free(&h);
    }
    *hold_s = fmax(SETTLE_S, isnan(needed) ? longest_s : needed);
    return BOIL_OK;
}

static void note_end(boil_correction *a, const boil_history *h)
{
    const boil_summary *s = &h->summary;
    a->boiled_off_kg = s->vented_total_kg;
    a->end_K = s->boiling_point_end_K;
    a->end_fraction = s->salt_fraction_end;
    a->end_strength_kg_m3 = s->strength_end_kg_m3;
    a->end_still_m = s->still_level_end_m;
}

/* The boil-off hardly depends on the water that makes up for it: a few runs suffice. */
static int converge(correcting *c, double hold_s)
{
    boil_correction *a = c->a;
    double wanted = a->amounts.level_m * c->set_density_kg_m3 * c->area_m2;
    int outcome = BOIL_OK;
    for (int i = 0; i < 6 && outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE; i++) {
        boil_history h;
        double before_s = a->done_s;
        place_steps(a, hold_s);
        if (a->boiled_off_kg > 0 && a->water.mass_kg > 0) { /* what boils off goes with the time */
            outcome = set_water(c, a->water.mass_kg + (a->done_s - before_s) * c->vent_kg_s);
            place_steps(a, hold_s);
        }
        if (outcome != BOIL_OK || (outcome = run_plan(c, 1, 0, &h)) != BOIL_OK)
            break;
        double lacks = wanted - h.summary.bath_mass_end_kg;
        note_end(a, &h);
        boil_history_free(&h);
        if (fabs(lacks) <= (adds(a) ? 1e-4 * wanted : 31 * c->vent_kg_s))
            break;
        if (!(adds(a) || a->boil_down_s > 0))
            break;
        outcome = set_water(c, a->water.mass_kg - a->boil_down_s * c->vent_kg_s + lacks);
    }
    return outcome;
}

/* The run of the whole, mixing fast: each pace was found alone. A bath that is too full now, but only boils down, is not to be
   judged by that. */
static int harms(correcting *c, bool *harm)
{
    boil_correction *a = c->a;
    boil_schedule s;
    boil_history h;
    const char *id = NULL, *title;
    int outcome = run_plan(c, BOIL_PACE_FAST_MIXING, 0, &h);
    if (outcome != BOIL_OK)
        return outcome;
    a->freeboard_min_m = h.summary.freeboard_min_m.value;
    outcome = boil_correct_schedule(a, &s);
    if (outcome == BOIL_OK && adds(a) &&
        !(a->boil_down_s > 0 && a->freeboard_now_m < a->start.limits.freeboard_m))
        outcome = boil_pace_forbids(&a->start, &s, &h, &id, &title);
    *harm = id != NULL;
    boil_schedule_free(&s);
    boil_history_free(&h);
    return outcome;
}

/* A pace found for less than the water that it came to is found again; all are a little slower from then on. */
static int slow_down(correcting *c, int time)
{
    const double share = 0.98;
    boil_correction *a = c->a;
    if (time == 2 && a->water.mass_kg > 0) {
        boil_correct_step whole = a->water;
        whole.mass_kg -= c->vent_kg_s * whole.over_s;
        int outcome = find_pace(c, &a->start, BOIL_ACT_WATER, &whole);
        a->water.pace = whole.pace;
        return outcome;
    }
    a->water.pace.rate_kg_s *= share;
    a->salts.pace.rate_kg_s *= share;
    a->liquid.pace.rate_kg_s *= share;
    return BOIL_OK;
}

static int plan_at_paces(correcting *c)
{
    boil_correction *a = c->a;
    double hold_s = 0;
    bool harm = true;
    int outcome = adds(a) ? find_hold(c, &hold_s) : BOIL_OK;
    for (int i = 0; i < 8 && harm && outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE; i++) {
        outcome = converge(c, hold_s);
        if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE)
            outcome = harms(c, &harm);
        if (outcome == BOIL_OK && harm)
            outcome = slow_down(c, i);
    }
    if (outcome == BOIL_OK && harm)
        a->end = BOIL_CORRECT_NO_PACE;
    return outcome;
}

static bool lacks_room(const boil_correction *a)
{
    static const char *const ids[] = {"freeboard-low", "overflow", "overflow-still", "salt-slug"};
    const char *found[] = {a->water.pace.limited_id, a->salts.pace.limited_id, a->liquid.pace.limited_id};
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        for (size_t k = 0; k < sizeof found / sizeof found[0]; k++)
            if (found[k] != NULL && strcmp(found[k], ids[i]) == 0)
                return true;
    return false;
}

/* Where the additions find no room at any pace, less is left in the tank. */
static int make_plan(correcting *c)
{
    boil_correction *a = c->a;
    int outcome = BOIL_OK;
    for (double left = 1; left > 0.5; left -= BAIL_STEP) {
        a->end = BOIL_CORRECT_DONE;
        if (left < 1)
            bail_to(c, left * fmin(a->unbailed_level_m, a->most_level_m),
                    a->bail == BOIL_BAIL_NOTHING ? BOIL_BAIL_FOR_POUR : a->bail);
        a->water = a->salts = a->liquid = (boil_correct_step){.mass_kg = 0};
        outcome = find_paces(c);
        if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE)
            outcome = plan_at_paces(c);
        if (outcome != BOIL_OK || a->end != BOIL_CORRECT_NO_PACE || !lacks_room(a))
            break;
    }
    return outcome;
}

/* How it ends ----------------------------------------------------------------------------------------------------- */

static int look_at_end(correcting *c)
{
    boil_correction *a = c->a;
    boil_plant then = a->start;
    boil_row calm;
    then.charge.value = a->end_K;
    then.tank.level_m = a->end_still_m;
    int outcome = calm_of(c, &then, &calm);
    if (outcome == BOIL_OK)
        outcome = load_in(c, a->end_still_m, &a->freeboard_loaded_m);
    double level_m = fmin(a->wanted_level_m, a->bail == BOIL_BAIL_NOTHING ? a->most_level_m : a->amounts.level_m);
    a->amounts_low = amounts_if(c, a->salt_fraction_low, level_m);
    a->amounts_high = amounts_if(c, a->salt_fraction_high, level_m);
    a->end_boiling_m = calm.level_m;
    a->end_loaded_m = a->start.tank.depth_m - a->freeboard_loaded_m;
    return outcome;
}

static bool is_no_bath(int outcome)
{
    return outcome == BOIL_RANGE || outcome == BOIL_NO_ROOT;
}

static int ended(boil_correction *a, boil_correct_end end)
{
    a->end = end;
    return BOIL_OK;
}

int boil_correct(const boil_plant *p, const boil_correct_case *asked, const boil_run_options *o, boil_correction *out)
{
    correcting c = {.a = out, .options = *o, .area_m2 = boil_tank_area(&p->tank)};
    c.air = boil_conditions_at(p->room.pressure_Pa, p->elevation_factor);
    *out = (boil_correction){.asked = *asked, .most_level_m = (double)NAN};
    set_start(&c, p, asked);
    int outcome = set_wanted(&c, p);
    if (outcome == BOIL_OK)
        outcome = look_at_bath(&c);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_BATH);
    if (outcome != BOIL_OK || out->end != BOIL_CORRECT_DONE)
        return outcome;
    outcome = find_most_level(&c);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_ROOM);
    if (outcome != BOIL_OK)
        return outcome;
    find_amounts(&c);
    outcome = make_plan(&c);
    return outcome == BOIL_OK && out->end == BOIL_CORRECT_DONE ? look_at_end(&c) : outcome;
}
