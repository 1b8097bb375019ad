/* Water on a quiet bath, on random plants: whatever else is changed that makes it no less dangerous changes no grade for the
   milder, and water trickled into a full boil is let pass. PLANTS=2000 in the environment tries as
   many plants, PLANTS=1000-2000 the later half of them, and a tenth of as many sound shifts; without it a few.
   Nothing published says how grave a grade is: it is order that is tested. */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_qrng.h>
#include <stdlib.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "support/cases.h"
#include "support/numbers.h"
#include "support/sampled.h"

enum { DRAWN = 12, LAYER = 0, SURGE, LEVEL, JUDGED, IDS = 5 };
/* What outlasts a run that is cut is the same layer; where the level goes over the rim the freeboard is said to be none: both are of the level. */
static const struct {
    const char *id;
    int of;
} judged_ids[IDS] = {{"water-layer", LAYER},
                     {"layer-outlasts-run", LAYER},
                     {"steam-surge", SURGE},
                     {"freeboard-low", LEVEL},
                     {"overflow", LEVEL}};
static const char *const judged_words[JUDGED] = {"layer", "surge", "level"};

enum { LOADS_MOST = 12 };

typedef struct {
    boil_plant plant;
    boil_action actions[2 * LOADS_MOST]; /* of the layers: the load that stops the boil, the water, what is changed */
    size_t count;
    double duration_s;
} shift;

typedef struct {
    int of[JUDGED]; /* severity, one higher; 0: not found */
    int gravest;
    int likely, possible; /* of all that is found at all */
    const char *foremost; /* of what is possible */
    double value, time_s;
    bool quiet; /* the likely run had water on a quiet bath */
} grades;

static drawn_numbers plants(int usual, int sanitized)
{
    return numbers_asked("PLANTS", (drawn_numbers){0, sampled(usual, sanitized)});
}

static double between(double low, double high, double share)
{
    return low + (high - low) * share;
}

/* Shallow and deep, wide and narrow, weak and strong, near the sea and high up. */
static boil_plant plant_of(const double u[])
{
    boil_plant p = open_plant(1);
    p.tank.length_m = between(0.5, 2.5, u[0]);
    p.tank.width_m = p.tank.length_m * between(0.3, 1, u[1]);
    p.tank.level_m = between(0.2, 0.9, u[2]);
    p.tank.depth_m = p.tank.level_m + between(0.12, 0.5, u[3]);
    p.charge = (boil_initial_charge){
        {1 - 0.4 * u[4], 0.35 * u[4], 0.05 * u[4]}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(between(130, 146, u[5])), 0};
    p.heater.input_W = boil_tank_area(&p.tank) * between(20e3, 50e3, u[6]);
    p.ambient.pressure_Pa = between(80e3, 101325, u[7]);
    return p;
}

static shift shift_of(const double u[])
{
    shift s = {.plant = plant_of(u), .count = 2};
    double bath_kg = boil_tank_area(&s.plant.tank) * s.plant.tank.level_m * 1450;
    s.actions[0] = plate_action(300, bath_kg * between(0.03, 0.10, u[8]) / 22.68);
    s.actions[0].is.load.rinse_kg_m2 = 0.05;
    s.actions[0].is.load.lowering_s = 10;
    s.actions[1] = two_gallons_action(310 + between(0, 30, u[9]), between(5, 60, u[10]));
    s.actions[1].is.water.mass_kg = bath_kg * 0.03 * u[11] * u[11];
    s.duration_s = 3600;
    return s;
}

static double poured_s(const shift *s)
{
    return s->actions[1].time_s + s->actions[1].is.water.over_s;
}

static void grade(const boil_findings *f, grades *g)
{
    for (size_t i = 0; i < f->count; i++)
        for (int k = 0; k < IDS; k++) {
            int *grade = &g->of[judged_ids[k].of], severity = 1 + (int)f->list[i].severity;
            if (strcmp(f->list[i].id, judged_ids[k].id) == 0 && severity > *grade)
                *grade = severity;
        }
}

static grades judge(const shift *s)
{
    grades g = {.gravest = 0};
    boil_schedule schedule;
    boil_run_options o = boil_run_options_default();
    boil_run_set set;
    boil_findings likely, possible;
    o.tolerance = 1e-6;
    boil_schedule_init(&schedule, s->duration_s);
    for (size_t i = 0; i < s->count; i++)
        assert_int_equal(boil_schedule_add(&schedule, &s->actions[i]), BOIL_OK);
    boil_schedule_sort(&schedule);
    assert_int_equal(boil_run_set_of(&s->plant, &schedule, &o, &set), BOIL_OK);
    assert_int_equal(boil_findings_of(&s->plant, &schedule, NULL, &set.likely, set.other, set.count, &likely, &possible),
                     BOIL_OK);
    grade(&likely, &g);
    grade(&possible, &g);
    for (int k = 0; k < JUDGED; k++)
        g.gravest = g.of[k] > g.gravest ? g.of[k] : g.gravest;
    g.quiet = set.likely.additions_count > 0 && set.likely.additions[0].quiet_poured_kg > 0;
    g.likely = likely.count > 0 ? 1 + (int)boil_findings_gravest(&likely) : 0;
    g.foremost = possible.count > 0 ? possible.list[0].id : "";
    g.value = possible.count > 0 ? possible.list[0].value : 0;
    g.time_s = possible.count > 0 ? possible.list[0].time_s : 0;
    g.possible = possible.count > 0 ? 1 + (int)boil_findings_gravest(&possible) : 0;
    boil_findings_free(&likely);
    boil_findings_free(&possible);
    boil_run_set_free(&set);
    boil_schedule_free(&schedule);
    return g;
}

/* What is changed, all else alike. ------------------------------------------------------------------------------------- */

static shift mixing(const shift *s, double factor)
{
    shift c = *s;
    c.plant.layer.turnover_factor = factor;
    return c;
}

static shift drift(const shift *s, double constant)
{
    shift c = *s;
    c.plant.pool.drift = constant;
    return c;
}

static shift cut(const shift *s, double after_s)
{
    shift c = *s;
    c.duration_s = poured_s(s) + after_s;
    return c;
}

/* The mixer goes on after the pour has ended. */
static shift stirred(const shift *s)
{
    shift c = *s;
    c.actions[c.count++] = (boil_action){.time_s = poured_s(s) + 5, .kind = BOIL_ACTION_MIXER, .is = {.on = true}};
    return c;
}

static shift loaded_again(const shift *s)
{
    shift c = *s;
    c.actions[c.count] = s->actions[0];
    c.actions[c.count].time_s = poured_s(s) + 3;
    c.actions[c.count++].is.load.mass_kg *= 0.5;
    return c;
}

static shift poured_as_two(const shift *s)
{
    shift c = *s;
    boil_action *first = &c.actions[1], *second = &c.actions[c.count++];
    first->is.water.mass_kg /= 2;
    first->is.water.over_s /= 2;
    *second = *first;
    second->time_s += first->is.water.over_s;
    return c;
}

static shift more_water(const shift *s)
{
    shift c = *s;
    c.actions[1].is.water.mass_kg *= 1.5;
    return c;
}

/* A notice more or less is no grade. */
static bool falls(int before, int now)
{
    return now < before && before > 1 + (int)BOIL_SEVERITY_NOTICE;
}

static int milder(const char *what, int plant, const grades *base, const shift *changed)
{
    grades now = judge(changed);
    int fell = 0;
    for (int k = 0; k < JUDGED; k++)
        if (falls(base->of[k], now.of[k])) {
            print_message("plant %d, %s: %s %d -> %d, all %d -> %d\n", plant, what, judged_words[k], base->of[k], now.of[k],
                          base->gravest, now.gravest);
            fell++;
        }
    return fell;
}

static int one_plant(int number, const shift *s, int grave[])
{
    grades base = judge(s);
    shift c;
    int fell = 0;
    if (!base.quiet)
        return 0;
    grave[base.gravest]++;
    c = mixing(s, 0.3), fell += milder("mixing x0.3", number, &base, &c);
    c = mixing(s, 3), fell += milder("mixing x3", number, &base, &c);
    c = drift(s, 1.18), fell += milder("drift 1.18", number, &base, &c);
    c = drift(s, 5), fell += milder("drift 5", number, &base, &c);
    c = cut(s, 1), fell += milder("cut after 1 s", number, &base, &c);
    c = cut(s, 20), fell += milder("cut after 20 s", number, &base, &c);
    c = stirred(s), fell += milder("mixer", number, &base, &c);
    c = loaded_again(s), fell += milder("further load", number, &base, &c);
    c = poured_as_two(s), fell += milder("two pours", number, &base, &c);
    c = more_water(s), fell += milder("more water", number, &base, &c);
    return fell;
}

static void no_grade_falls(void **unused)
{
    (void)unused;
    gsl_qrng *q = gsl_qrng_alloc(gsl_qrng_sobol, DRAWN);
    drawn_numbers tried = plants(8, 2);
    int fell = 0, grave[6] = {0};
    for (int i = 0; i < tried.to; i++) {
        double u[DRAWN];
        gsl_qrng_get(q, u);
        shift s = shift_of(u);
        if (i >= tried.from && boil_plant_problem(&s.plant) == NULL)
            fell += one_plant(i, &s, grave);
    }
    gsl_qrng_free(q);
    print_message("%d plants; water on a quiet bath: %d without, %d notice, %d caution, %d warning, %d danger; %d fell\n",
                  tried.to - tried.from, grave[0], grave[1], grave[2], grave[3], grave[4], fell);
    assert_int_equal(fell, 0);
    assert_true(grave[4] > 0);
}

/* A sound shift: four hours of loads in a wide tank, and as much water as the steam takes, slowly into the full boil. */
static shift sound_shift_of(const double u[])
{
    shift s = {.plant = open_plant(between(49e3, 67e3, u[0])), .duration_s = 4 * 3600};
    double every_s = 60 * (u[1] < 1.0 / 3 ? 20 : u[1] < 2.0 / 3 ? 30 : 45);
    s.plant.tank.length_m = 1.83;
    s.plant.tank.width_m = 0.914;
    s.plant.tank.level_m = 0.508;
    s.plant.tank.depth_m = 0.762;
    boil_steady_state calm;
    assert_int_equal(boil_steady_state_at(&s.plant, s.plant.heater.input_W, &calm), BOIL_OK);
    for (double t = 300; t + every_s <= s.duration_s; t += every_s) {
        boil_action *load = &s.actions[s.count++], *water = &s.actions[s.count++];
        *load = plate_action(t, between(18, 43, u[2]) / 22.68);
        load->is.load.size_m = between(0.0032, 0.0095, u[3]);
        load->is.load.temperature_K = CELSIUS(between(16, 60, u[4]));
        load->is.load.rinse_kg_m2 = between(0.016, 0.16, u[5]);
        load->is.load.lowering_s = 10;
        load->is.load.immersed_s = every_s - 300;
        *water = two_gallons_action(t + 240, between(480, 900, u[6]));
        water->is.water.mass_kg = 0.95 * every_s * (calm.steam_kg_s + calm.evaporated_kg_s);
    }
    return s;
}

/* Two whose rinse water comes off with three to five times the calm steam, long before a load brings the surface within a quarter more
   than the freeboard asked for: the one is no matter of the other. */
static void rinse_water_comes_off_while_there_is_room(void **unused)
{
    (void)unused;
    gsl_qrng *q = gsl_qrng_alloc(gsl_qrng_sobol, 7);
    const int numbers[] = {70, 188};
    for (int i = 0, k = 0; k < sampled(2, 1); i++) {
        double u[7];
        gsl_qrng_get(q, u);
        if (i != numbers[k])
            continue;
        shift s = sound_shift_of(u);
        grades g = judge(&s);
        print_message("sound shift %d: likely %d, possible %d\n", i, g.likely, g.possible);
        assert_true(g.likely <= 1 + (int)BOIL_SEVERITY_NOTICE && g.possible <= 1 + (int)BOIL_SEVERITY_NOTICE);
        k++;
    }
    gsl_qrng_free(q);
}

/* Nothing of it is likely above a notice; and of a hundred one may possibly be more. */
static void a_full_boil_takes_its_water(void **unused)
{
    (void)unused;
    gsl_qrng *q = gsl_qrng_alloc(gsl_qrng_sobol, 7);
    drawn_numbers tried = plants(8, 2);
    tried = getenv("PLANTS") != NULL ? (drawn_numbers){tried.from / 10, tried.to / 10} : tried;
    const int notice = 1 + (int)BOIL_SEVERITY_NOTICE;
    int likely = 0, possible = 0, grave = 0;
    for (int i = 0; i < tried.to; i++) {
        double u[7];
        gsl_qrng_get(q, u);
        if (i < tried.from)
            continue;
        shift s = sound_shift_of(u);
        grades g = judge(&s);
        likely += g.likely > notice;
        possible += g.possible > notice;
        grave += g.possible > 1 + (int)BOIL_SEVERITY_CAUTION;
        if (g.likely > notice || g.possible > notice)
            print_message("sound shift %d: likely %d, possible %d: %s, %.4g at %.0f s\n", i, g.likely, g.possible, g.foremost,
                          g.value, g.time_s);
    }
    gsl_qrng_free(q);
    print_message("%d sound shifts: above a notice %d likely, %d possible\n", tried.to - tried.from, likely, possible);
    assert_int_equal(likely + grave, 0);
    assert_true(100 * possible <= tried.to - tried.from);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_grade_falls),
        cmocka_unit_test(rinse_water_comes_off_while_there_is_room),
        cmocka_unit_test(a_full_boil_takes_its_water),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("random layers", tests, NULL, NULL);
}
