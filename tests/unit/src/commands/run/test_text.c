/* The report, from histories made by hand: no physics runs here. */
#include "support/close.h"

#include <string.h>

#include "base/program.h"
#include "commands/run/parts.h"
#include "commands/run/output.h"
#include "describe/gist.h"
#include "describe/report.h"
#include "describe/trace.h"
#include "describe/verdict.h"
#include "scenario/keys.h"
#include "support/json.h"
#include "support/printed.h"

#define NEVER ((double)NAN)
#define LOADS_MOST 500

/* A quiet, uneventful shift from 6:00: a load each half hour, its boil back after 50 s. */
typedef struct {
    scenario scenario;
    carried_out done;
    boil_action actions[LOADS_MOST + 1];
    boil_act_result acts[LOADS_MOST + 1];
    boil_load_result loads[LOADS_MOST];
    boil_addition_result addition;
    boil_row rows[3];
    boil_finding found, possible;
} shift;

static boil_row row_at(double t, bool boiling, double level_m)
{
    return (boil_row){.time_s = t,
                      .boiling = boiling,
                      .temperature_K = boiling ? 413.7 : 411.7,
                      .boiling_point_K = 413.7,
                      .heater_W = 1000,
                      .level_m = level_m,
                      .layer_K = NEVER,
                      .coldest_load_K = NEVER};
}

static boil_summary calm_summary(void)
{
    return (boil_summary){.temperature_start_K = 413.7,
                          .temperature_end_K = 413.7,
                          .boiling_point_start_K = 413.7,
                          .boiling_point_end_K = 414.0,
                          .still_level_start_m = 0.66,
                          .still_level_end_m = 0.655,
                          .level_max_m = {0.734, 4920},
                          .freeboard_min_m = {0.1803, 4920},
                          .boiling_share = 0.99,
                          .time_to_boil_s = NEVER,
                          .crystals_from_K = NEVER,
                          .crystals_s = NEVER,
                          .overflow_s = NEVER,
                          .still_overflow_s = NEVER};
}

static void shift_begin(shift *s, size_t loads)
{
    *s = (shift){.scenario = {.title = (char *)(uintptr_t) "A shift",
                              .path = (char *)(uintptr_t) "shift.bath",
                              .start_s = 21600,
                              .plant = boil_plant_default()}};
    s->scenario.plant.tank.depth_m = 0.9144;
    s->scenario.plant.charge = (boil_initial_charge){{0.8, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, 413.7, 0};
    for (size_t i = 0; i < loads; i++) {
        double t = 300 + 1800.0 * (double)i;
        s->actions[i] = (boil_action){.time_s = t, .kind = BOIL_ACTION_LOAD};
        s->acts[i] = (boil_act_result){t, BOIL_ACT_DONE};
        s->loads[i] = (boil_load_result){.action = i,
                                         .time_s = t,
                                         .mass_kg = 45,
                                         .boil_lost_s = t + 5,
                                         .recovery_s = 50,
                                         .lowest_temperature_K = 412,
                                         .hot_s = 90,
                                         .lifted_s = t + 1200};
    }
    double end = 1800 * (double)(loads > 2 ? loads : 2);
    s->scenario.schedule = (boil_schedule){.actions = s->actions, .count = loads, .duration_s = end};
    s->rows[0] = row_at(0, true, 0.70);
    s->rows[1] = row_at(end / 2, false, 0.72);
    s->rows[2] = row_at(end, true, 0.70);
    s->done = (carried_out){.scenario = &s->scenario,
                            .central = {.acts = s->acts,
                                        .acts_count = loads,
                                        .loads = s->loads,
                                        .loads_count = loads,
                                        .rows = s->rows,
                                        .rows_count = 3,
                                        .summary = calm_summary(),
                                        .end = BOIL_RUN_DONE,
                                        .end_s = end},
                            .tolerance = 1e-8};
}

static void add_water(shift *s, double t)
{
    size_t last = s->scenario.schedule.count++;
    s->actions[last] = (boil_action){.time_s = t, .kind = BOIL_ACTION_WATER};
    s->acts[s->done.central.acts_count++] = (boil_act_result){t, BOIL_ACT_DONE};
    s->addition = (boil_addition_result){.action = last,
                                         .time_s = t,
                                         .over_s = 240,
                                         .mass_kg = 7.57,
                                         .steam_before_kg_s = 0.01,
                                         .steam_peak_kg_s = 0.0134,
                                         .boil_lost_s = NEVER,
                                         .layer_peak_kg = 0.33,
                                         .level_rise_m = 0.0102,
                                         .freeboard_min_m = 0.2};
    s->done.central.additions = &s->addition;
    s->done.central.additions_count = 1;
}

static boil_finding finding(const char *id, const char *title, boil_severity severity, double t)
{
    return (boil_finding){.id = id,
                          .title = title,
                          .advice = "Do this.",
                          .severity = severity,
                          .rank = 1000.0 * (double)severity,
                          .time_s = t,
                          .worst_s = t,
                          .outside_s = NEVER,
                          .value = 0.2,
                          .limit = 0.1,
                          .unit = BOIL_UNIT_LENGTH,
                          .needed_W = NEVER,
                          .count = 1};
}

static void set_found(shift *s, boil_finding f)
{
    s->found = f;
    s->done.found = (boil_findings){.list = &s->found, .count = 1, .capacity = 1};
}

static void set_possible(shift *s, boil_finding f)
{
    s->possible = f;
    s->done.possible = (boil_findings){.list = &s->possible, .count = 1, .capacity = 1};
}

/* Tests make one shift at a time; it is large. */
static shift the;

static void assert_verdict(const char *text)
{
    assert_string_equal(verdict_of(&the.done, UNITS_US).text, text);
}

static char *printed_by(void (*print)(const carried_out *, unit_system, FILE *))
{
    printed p;
    printed_begin(&p);
    print(&the.done, UNITS_US, p.to);
    return printed_end(&p);
}

static size_t lines_of(const char *text)
{
    size_t n = 0;
    for (; *text != '\0'; text++)
        n += *text == '\n';
    return n;
}

static size_t widest_of(const char *text)
{
    size_t most = 0;
    for (const char *at = text; *at != '\0'; at += strcspn(at, "\n") + 1) {
        size_t n = strcspn(at, "\n");
        most = n > most ? n : most;
    }
    return most;
}

static void assert_says(const char *text, const char *words)
{
    if (strstr(text, words) == NULL)
        fail_msg("'%s' is not said in:\n%s", words, text);
}

static void a_calm_shift_has_a_calm_verdict(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    assert_verdict("8 of 8 loads back within 2 min; least freeboard 7.1 in at 7:22; nothing above NOTICE");
    the.loads[2].recovery_s = 200;
    assert_verdict("7 of 8 loads back within 2 min, the slowest in 3.3 min; least freeboard 7.1 in at 7:22; nothing above "
                   "NOTICE");
    the.loads[7].recovery_s = NEVER;
    assert_verdict("6 of 8 loads back within 2 min, 1 not at all; least freeboard 7.1 in at 7:22; nothing above NOTICE");
    shift_begin(&the, 0);
    assert_verdict("least freeboard 7.1 in at 7:22; nothing above NOTICE");
}

static void the_gravest_finding_comes_first(void **state)
{
    (void)state;
    shift_begin(&the, 1);
    set_found(&the, finding("freeboard-low", "freeboard below the limit", BOIL_SEVERITY_CAUTION, 4920));
    assert_verdict("CAUTION at 7:22: freeboard below the limit; 1 of 1 load back within 2 min; least freeboard 7.1 in at "
                   "7:22");
    set_possible(&the, finding("overflow", "the boiling surface reaches the rim", BOIL_SEVERITY_DANGER, 5000));
    assert_verdict("DANGER (possible) at 7:23: the boiling surface reaches the rim; 1 of 1 load back within 2 min; least "
                   "freeboard 7.1 in at 7:22");
    set_found(&the, finding("water-layer", "water floats on the quiet bath", BOIL_SEVERITY_DANGER, 4920));
    the.found.rank += 250; /* as likely, and what happens to the bath */
    assert_verdict("DANGER at 7:22: water floats on the quiet bath; 1 of 1 load back within 2 min; least freeboard 7.1 in "
                   "at 7:22");
}

static void a_stopped_run_says_so_first(void **state)
{
    (void)state;
    shift_begin(&the, 1);
    the.done.central.end = BOIL_RUN_OUT_OF_RANGE;
    the.done.central.end_s = 4200;
    the.done.central.stop_quantity = "sodium hydroxide strength";
    the.done.central.stop_value = 0.7000001;
    the.done.central.stop_limit = 0.7;
    the.done.central.stop_unit = "kg/kg";
    assert_verdict("STOPPED at 7:10: sodium hydroxide strength reached 0.7 kg/kg, where the known range ends; 1 of 1 load "
                   "back within 2 min; least freeboard 7.1 in at 7:22; nothing above NOTICE");
    the.done.central.end = BOIL_RUN_FULL;
    assert_verdict("STOPPED at 7:10: the tank is full; 1 of 1 load back within 2 min; least freeboard 7.1 in at 7:22; nothing "
                   "above NOTICE");
}

static void a_bath_that_never_boils_says_what_it_needs(void **state)
{
    (void)state;
    shift_begin(&the, 1);
    the.done.central.summary.boiling_share = 0;
    boil_finding f = finding("never-boils", "the bath never boils", BOIL_SEVERITY_WARNING, 0);
    f.needed_W = 87921.3;
    set_found(&the, f);
    assert_verdict("WARNING at 6:00: the bath never boils: it needs 300 kBtu/h to the tank; least freeboard 7.1 in at 7:22");
    set_possible(&the, finding("overflow", "the boiling surface reaches the rim", BOIL_SEVERITY_DANGER, 5000));
    assert_verdict("DANGER (possible) at 7:23: the boiling surface reaches the rim; the bath never boils: it needs 300 kBtu/h "
                   "to the tank; least freeboard 7.1 in at 7:22");
}

static void the_sheet_has_a_line_a_load_and_an_addition(void **state)
{
    (void)state;
    shift_begin(&the, 2);
    add_water(&the, 3600);
    the.loads[1].boil_lost_s = NEVER;
    the.loads[1].recovery_s = 0;
    char *text = printed_by(sheet_print);
    assert_int_equal(lines_of(text), 7);
    assert_in_range(widest_of(text), 60, 79);
    assert_says(text, "6:05 load                              6:05     50 s  281.9    90 s\n");
    assert_says(text, "6:35 load                              kept        -  281.9    90 s\n");
    assert_says(text, "7:00 water                           kept        - +16.7   x1.3 0.728  0.4\n");
    free(text);
}

static void the_sheet_tells_kinds_apart_and_what_parts_carry_out(void **state)
{
    (void)state;
    shift_begin(&the, 1);
    add_water(&the, 3600);
    the.actions[1].kind = the.addition.kind = BOIL_ACTION_SALTS;
    the.loads[0].drag_out_kg = 0.105;
    char *text = printed_by(sheet_print);
    assert_says(text, "   in  steam layer rise\n");
    assert_says(text, "6:05 load                              6:05     50 s  281.9    90 s -0.231\n");
    assert_says(text, "7:00 salts                           kept        - +16.7   x1.3");
    free(text);
    the.actions[1].kind = the.addition.kind = BOIL_ACTION_LIQUID;
    text = printed_by(sheet_print);
    assert_says(text, "7:00 liquid                          kept");
    free(text);
    the.actions[1].kind = BOIL_ACTION_MIXER; /* is no addition: no line */
    the.done.central.additions_count = 0;
    text = printed_by(sheet_print);
    assert_int_equal(lines_of(text), 3);
    free(text);
}

/* A line tells three and more that went alike, the slowest for all; one that went otherwise stands by itself. */
static void the_sheet_folds_what_went_alike(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    the.loads[2].recovery_s = 50.9;
    the.loads[6].recovery_s = 70;
    char *text = printed_by(sheet_print);
    assert_int_equal(lines_of(text), 2 + 2 + 1 + 1);
    assert_says(text, "7:05 load                              7:05     51 s");
    assert_says(text, "6 like this, the worst is shown: 6:05 to 8:35, every 30 min\n");
    assert_says(text, "9:05 load                              9:05     70 s");
    assert_says(text, "9:35 load                              9:35     50 s");
    free(text);
}

/* Sums by hand: 3.6e6 J are 1 kWh and 3.412 kBtu; 45.359237 kg are 100 lb. */
static void set_account(boil_summary *s)
{
    s->input_total_J = 36e6;
    s->heater_total_J = 18e6;
    s->vented_total_kg = 20;
    s->steel_kg = 4 * 45.359237;
    s->rinse_added_kg = 0.4;
    s->drag_out_kg = 0.8;
    s->drag_out_salts_kg = 0.4;
}

static void the_account_is_in_all_per_load_and_per_hundredweight(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    set_account(&the.done.central.summary);
    char *text = printed_by(account_print);
    assert_in_range(widest_of(text), 60, 79);
    assert_says(text, "      in all     per load per 100 lb of steel\n");
    assert_says(text, " fuel                                34.1 kBtu    4.27 kBtu           8.53 kBtu\n");
    assert_says(text, " heat to the tank                    17.1 kBtu ");
    assert_says(text, " vapour given off                      44.1 lb      5.51 lb             11.0 lb\n");
    assert_says(text, " bath liquid carried out by parts      1.76 lb ");
    assert_says(text, "  of it salts                         0.882 lb ");
    static const char *const absent[] = {"hand",       "valve",    "lid",       "salts added", "dry",    "ready",
                                         "evaporated", "floating", "Automatic", "Dry salt",    "Cooling"};
    for (size_t i = 0; i < sizeof absent / sizeof absent[0]; i++)
        if (strstr(text, absent[i]) != NULL)
            fail_msg("'%s' is said of a run that has none:\n%s", absent[i], text);
    free(text);
    printed p;
    printed_begin(&p);
    account_print(&the.done, UNITS_SI, p.to);
    text = printed_end(&p);
    assert_says(text, "      in all     per load per 100 kg of steel\n");
    assert_says(text, " fuel                                 10.0 kWh     1.25 kWh            5.51 kWh\n");
    free(text);
}

static void the_account_names_all_that_there_was(void **state)
{
    (void)state;
    shift_begin(&the, 0);
    boil_summary *s = &the.done.central.summary;
    set_account(s);
    the.scenario.plant.heater.source = BOIL_HEAT_STEAM;
    the.scenario.plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    s->water_added_kg = 1;
    s->water_controlled_kg = 30;
    s->valve_openings = 12;
    s->valve_open_share = 0.254;
    s->condensate_kg = 3;
    s->salts_added_kg = 10;
    s->liquid_added_kg = 35;
    s->mixed_kg = 20;
    s->returned_kg = 15;
    s->taken_kg = 25;
    s->waste_kg = 10;
    s->waste_salts_kg = 5;
    s->undissolved_max_kg = 4;
    s->bed_max_m = 0.0051;
    s->bed_superheat_max_K = (boil_extreme){20, 4920};
    s->crystals_from_K = 363.15;
    s->crystals_s = 86400;
    s->crystals_max_kg = 50;
    char *text = printed_by(account_print);
    assert_null(strstr(text, "per load"));
    assert_null(strstr(text, "fuel"));
    assert_says(text, " water by hand                         2.20 lb\n");
    assert_says(text, " water by the valve                    66.1 lb\n");
    assert_says(text, " condensate from the lid               6.61 lb\n");
    assert_says(text, " dry salts                             22.0 lb\n");
    assert_says(text, " ready-mixed liquid                    44.1 lb\n");
    assert_says(text, " bath liquid run back in               33.1 lb\n");
    assert_says(text, "  of it not run back                   22.0 lb\n");
    assert_says(text, "  salts in that                        11.0 lb\n");
    assert_says(text, "the valve opened 12 times, was open 25 % of the time and gave\n 66.1 lb.\n");
    assert_says(text, "Dry salt: at most 8.82 lb not yet dissolved; on the floor a bed of up to\n"
                      " 0.20 in, the floor under it up to 36.0 degF hotter than the bath (7:22).\n");
    assert_says(text, "Cooling: below 194.0 degF salts crystallise, here from 6:00+1d on; nitrate and\n"
                      " nitrite up to 110 lb.\n");
    free(text);
    s->bed_max_m = the.scenario.plant.fittings.grain_m; /* thinner is none */
    text = printed_by(account_print);
    assert_says(text, "on the floor a bed of up to");
    free(text);
    s->valve_quiet_kg = 3;
    s->valve_openings = 1;
    s->bed_max_m = 0.0005; /* half a grain */
    s->crystals_max_kg = 0;
    text = printed_by(account_print);
    assert_says(text, "the valve opened 1 time, was open 25 % of the time and gave\n 66.1 lb, 6.61 lb of it while");
    assert_says(text, "not yet dissolved.\n");
    assert_says(text, "here from 6:00+1d on.\n");
    free(text);
}

/* By hand: 36 an hour for four hours and eight loads. A short word stands beside each amount, a longer one once. */
static void costs_say_their_currency(void **state)
{
    (void)state;
    char four[] = "Euro", five[] = "Euros";
    shift_begin(&the, 8);
    the.scenario.settings = calloc(key_count(), sizeof *the.scenario.settings);
    assert_non_null(the.scenario.settings);
    the.done.central.summary.steel_kg = 45.359237;
    the.scenario.prices.labour = 36.0 / 3600;
    the.scenario.prices.currency = four;
    char *text = printed_by(account_print);
    assert_says(text, " cost of labour                    144.00 Euro   18.00 Euro         144.00 Euro\n");
    assert_says(text, " cost in all                       144.00 Euro   18.00 Euro         144.00 Euro\n");
    assert_null(strstr(text, "Costs are in"));
    free(text);
    the.scenario.prices.currency = five;
    text = printed_by(account_print);
    assert_says(text, " cost in all                            144.00        18.00              144.00\n");
    assert_says(text, "Costs are in Euros.\n");
    free(text);
    free(the.scenario.settings);
}

static void a_long_shift_stays_readable(void **state)
{
    (void)state;
    shift_begin(&the, LOADS_MOST);
    for (size_t i = 0; i < LOADS_MOST; i += 2) /* no two in a row alike */
        the.loads[i].recovery_s = 60;
    the.loads[400].recovery_s = 270;
    char *text = printed_by(sheet_print);
    assert_int_equal(lines_of(text), 2 + SHEET_LINES_MAX);
    assert_in_range(widest_of(text), 60, 79);
    assert_says(text, " ... and 461 loads more; slowest back 4.5 min (14:05+8d)\n");
    free(text);
}

static void chart_alone(const carried_out *o, unit_system s, FILE *to)
{
    screen_chart(o, &o->central, &(output){.system = s}, 7, 6, to);
}

static void what_follows_an_overflow_is_marked(void **state)
{
    (void)state;
    shift_begin(&the, 3);
    the.done.central.summary.overflow_s = 2000;
    char *text = printed_by(sheet_print);
    assert_says(text, "\n     6:05 load");
    assert_says(text, "\n*    6:35 load");
    assert_says(text, "\n*    7:05 load");
    assert_says(text, " * after overflow: not a prediction\n");
    free(text);
    the.done.central.summary.overflow_s = 340; /* the first load's boil is back at 355 s */
    text = printed_by(sheet_print);
    assert_says(text, "\n*    6:05 load");
    free(text);
    text = printed_by(chart_alone);
    assert_says(text, "from 6:05 on, after overflow: not a prediction\n");
    free(text);
}

static void the_strip_fits_a_terminal(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    the.done.central.quiet = &(boil_quiet_result){.start_s = 7200, .end_s = 7300};
    the.done.central.quiet_count = 1;
    char *text = printed_by(chart_alone);
    assert_in_range(widest_of(text), 60, 79);
    assert_says(text, "q");
    assert_says(text, "      36.0 |====="); /* 0.9144 m */
    assert_int_equal(lines_of(text), chart_lines(&the.done, 7, 6) + 1);
    for (const char *c = text; *c != '\0'; c++)
        assert_in_range((unsigned char)*c, '\n', '~');
    free(text);
    the.done.central.end_s = 0;
    assert_int_equal(chart_lines(&the.done, 7, 6), 0);
}

/* A surge of seconds stands in its column, over the rim; what is short of the rim by a hair does not. */
static void the_strip_shows_what_is_over_the_rim(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    the.done.central.summary.level_max_m = (boil_extreme){0.9140, 4920};
    char *text = printed_by(chart_alone);
    assert_says(text, "      36.0 |================================================================\n");
    free(text);
    the.done.central.summary.level_max_m = (boil_extreme){0.9150, 4920};
    text = printed_by(chart_alone);
    assert_says(text, "#=====");
    assert_says(text, "=====#");
    free(text);
}

static char *whole_report(unit_system system, bool colour)
{
    printed p;
    printed_begin(&p);
    run_report(&the.done, &(output){.system = system, .colour = colour, .verbose = true}, p.to);
    return printed_end(&p);
}

static void a_report_says_what_it_must(void **state)
{
    (void)state;
    shift_begin(&the, 8);
    add_water(&the, 15000);
    set_found(&the, finding("freeboard-low", "freeboard below the limit", BOIL_SEVERITY_CAUTION, 4920));
    set_possible(&the, finding("overflow", "the boiling surface reaches the rim", BOIL_SEVERITY_DANGER, 5000));
    char *text = whole_report(UNITS_US, false);
    assert_in_range(widest_of(text), 60, 79);
    assert_says(text, "DANGER (possible) 7:23  the boiling surface reaches the rim");
    assert_says(text, " CAUTION  freeboard below the limit\n          first 7:22; 7.9 in at 7:22, limit 3.9. Do this.\n");
    assert_says(text, " DANGER   (possible) the boiling surface reaches the rim\n");
    assert_says(text, "never a permission");
    assert_says(text, "eyewash");
    assert_says(text, "onto dry\n salt");
    assert_says(text, "non-ferrous");
    assert_says(text, "+-2 to 3 %");
    assert_says(text, PROGRAM_NAME " " BOIL_VERSION_TEXT);
    assert_null(strstr(text, "safe"));
    assert_null(strstr(text, "nan"));
    assert_null(strchr(text, '\033'));
    free(text);
    text = whole_report(UNITS_SI, true);
    assert_says(text, "\033[1;33mCAUTION\033[0m  freeboard below the limit\n          first 7:22; 200 mm at 7:22, limit 100.");
    free(text);
}

static void uncertainty_falls_on_what_was_not_given(void **state)
{
    (void)state;
    printed p;
    boil_initial_charge c = {{0.8, 0.15, 0.05}, BOIL_INITIAL_BY_STRENGTH, 719, 0};
    printed_begin(&p);
    report_uncertainty(&c, UNITS_US, p.to);
    char *text = printed_end(&p);
    assert_says(text, "up to 9 degF lower or\n 5 degF higher");
    free(text);
    c.blend[BOIL_NAOH] = 0.65;
    printed_begin(&p);
    report_uncertainty(&c, UNITS_US, p.to);
    text = printed_end(&p);
    assert_says(text, "up to 11 degF lower or\n 7 degF higher");
    free(text);
    c.blend[BOIL_NAOH] = 1;
    printed_begin(&p);
    report_uncertainty(&c, UNITS_SI, p.to);
    text = printed_end(&p);
    assert_says(text, "up to 4 K lower or 2 K\n higher");
    free(text);
}

static void what_never_came_is_null_in_json_and_empty_in_csv(void **state)
{
    (void)state;
    printed p;
    shift_begin(&the, 1);
    add_water(&the, 2000);
    the.addition.kind = BOIL_ACTION_LIQUID;
    the.loads[0].hot_s = NEVER;
    the.loads[0].drag_out_kg = 0.1;
    the.done.central.summary.water_controlled_kg = 30;
    the.done.central.summary.bed_superheat_max_K.value = NEVER;
    for (size_t i = 0; i < 3; i++) {
        the.rows[i].sensor_K = NEVER;
        the.rows[i].valve_open = i == 1;
        the.rows[i].undissolved_kg = 2.5;
    }
    printed_begin(&p);
    json_document(run_documents->fields, &the.done, p.to);
    char *text = printed_end(&p);
    assert_true(is_json(text));
    assert_says(text, "\"hot_s\": null");
    assert_says(text, "\"stopped\": null");
    assert_says(text, "\"overflow_s\": null");
    assert_says(text, "\"scenario\": \"shift.bath\"");
    assert_says(text, "\"kind\": \"liquid\"");
    assert_says(text, "\"drag_out_kg\": 0.1,\n");
    assert_says(text, "\"account\": {\n    \"loads\": 1,");
    assert_says(text, "\"water_by_valve_kg\": 30,");
    assert_says(text, "\"bed_superheat_max_K\": null");
    assert_null(strstr(text, "nan"));
    free(text);
    printed_begin(&p);
    trace_csv(&the.done.central, p.to);
    text = printed_end(&p);
    assert_int_equal(lines_of(text), 4);
    assert_says(text, "time_s,boiling,temperature_K,");
    assert_says(text, "\n1800,0,411.7,413.7,");
    assert_says(text, ",0,0,,0,"); /* no layer: no temperature of it */
    assert_says(text, ",coldest_load_K,undissolved_kg,valve_open,sensor_K\n");
    assert_says(text, ",,2.5,0,\n");
    assert_says(text, ",,2.5,1,\n");
    free(text);
}

/* The worst of the three, as the power of ten above it. */
static void balances_close_to_a_power_of_ten(void **state)
{
    (void)state;
    shift_begin(&the, 0);
    boil_history *h = &the.done.central;
    h->balance.energy.closure = 1e-12;
    h->balance.water.closure = -3e-8;
    h->balance.salts.closure = 2e-9;
    char *text = printed_by(account_print);
    assert_says(text, "close to 1e-07.");
    free(text);
    h->balance.water.closure = 0;
    text = printed_by(account_print);
    assert_says(text, "close to 1e-08.");
    free(text);
    h->balance.salts.closure = 1e-13;
    text = printed_by(account_print);
    assert_says(text, "close to 1e-09.");
    free(text);
}

/* The title ends the first line where two blanks at least lie between, the line then 79 columns wide; one character more is left out. */
static void a_title_stands_where_it_has_room(void **state)
{
    (void)state;
    char title[REPORT_WIDTH + 1];
    printed p;
    for (size_t more = 0; more < 2; more++) {
        const output how = {.system = UNITS_US};
        shift_begin(&the, 1);
        const gist g = gist_of(&the.done, UNITS_US);
        size_t left = strlen(g.word) + strlen(g.behind.text), right = REPORT_WIDTH - 2 - left + more;
        memset(title, 'x', right);
        title[right] = '\0';
        the.scenario.title = title;
        printed_begin(&p);
        screen_head(&the.done, &how, p.to);
        char *text = printed_end(&p);
        assert_int_equal(strlen(text), more ? left + 1 : REPORT_WIDTH + 1);
        assert_int_equal(strstr(text, title) != NULL, !more);
        free(text);
    }
}

/* Manual page and schema go through the list to its end. */
static void a_run_is_written_as_two_documents(void **state)
{
    (void)state;
    assert_string_equal(run_documents[0].option, "--json");
    assert_string_equal(run_documents[1].option, "--csv");
    assert_true(!run_documents[0].csv && run_documents[1].csv);
    assert_null(run_documents[2].option);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_calm_shift_has_a_calm_verdict),
        cmocka_unit_test(the_gravest_finding_comes_first),
        cmocka_unit_test(a_stopped_run_says_so_first),
        cmocka_unit_test(a_bath_that_never_boils_says_what_it_needs),
        cmocka_unit_test(the_sheet_has_a_line_a_load_and_an_addition),
        cmocka_unit_test(the_sheet_tells_kinds_apart_and_what_parts_carry_out),
        cmocka_unit_test(the_sheet_folds_what_went_alike),
        cmocka_unit_test(the_account_is_in_all_per_load_and_per_hundredweight),
        cmocka_unit_test(the_account_names_all_that_there_was),
        cmocka_unit_test(costs_say_their_currency),
        cmocka_unit_test(a_long_shift_stays_readable),
        cmocka_unit_test(what_follows_an_overflow_is_marked),
        cmocka_unit_test(the_strip_fits_a_terminal),
        cmocka_unit_test(the_strip_shows_what_is_over_the_rim),
        cmocka_unit_test(a_report_says_what_it_must),
        cmocka_unit_test(uncertainty_falls_on_what_was_not_given),
        cmocka_unit_test(what_never_came_is_null_in_json_and_empty_in_csv),
        cmocka_unit_test(balances_close_to_a_power_of_ten),
        cmocka_unit_test(a_run_is_written_as_two_documents),
        cmocka_unit_test(a_title_stands_where_it_has_room),
    };
    return cmocka_run_group_tests_name("report", tests, NULL, NULL);
}
