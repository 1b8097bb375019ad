/* Salts, liquid, drag-out, automatic water, coil, mixer, lid, exhaust, cooling: balances,
   closed forms, and order: more heat never hurts, more steel never helps. */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_qrng.h>
#include <string.h>

#include "equipment/water_control.h"
#include "support/begun.h"
#include "support/close.h"

#include "properties/solubility.h"
#include "properties/water.h"
#include "support/cases.h"
#include "support/sampled.h"

static boil_run_options every(double seconds)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = seconds;
    return o;
}

static boil_action salts_action(double time_s, double kg, double over_s)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_SALTS};
    a.is.salts = (boil_action_salts){kg, over_s, CELSIUS(25), {0.80, 0.15, 0.05}};
    return a;
}

static boil_action liquid_action(double time_s, double kg, double over_s, double celsius)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_LIQUID};
    a.is.liquid = (boil_action_liquid){kg, over_s, CELSIUS(celsius), {0.80, 0.15, 0.05}, 0.50};
    return a;
}

static boil_action switch_action(double time_s, boil_action_kind kind, bool on)
{
    boil_action a = {.time_s = time_s, .kind = kind};
    a.is.on = on;
    return a;
}

static boil_action dial_action(double time_s, double dial)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_HEAT};
    a.is.heat.dial = dial;
    return a;
}

/* Cold liquid warms to the boil and mixes: adiabatic balance of the pinned bath by the property functions alone. */
static void liquid_cools_by_its_enthalpy(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.heater.input_W = 0;
    boil_run_options o = every(10);
    boil_action a = liquid_action(100, 50, 100, 20);
    a.is.liquid.blend[0] = 1;
    a.is.liquid.blend[1] = a.is.liquid.blend[2] = 0;
    boil_history h = run_actions(&p, 400, &o, &a, 1);
    boil_initial_state c;
    assert_int_equal(boil_plant_initial(&p, &c), BOIL_OK);
    boil_mixture in = boil_mixture_of(a.is.liquid.blend, 0.50), mixed = c.mixture;
    double heat = boil_solution_heat(&mixed, c.temperature_K).enthalpy_J + 50 * boil_solution_heat(&in, CELSIUS(20)).enthalpy_J;
    mixed.water += 50 * in.water;
    mixed.salt[0] += 50 * in.salt[0];
    assert_close(h.summary.temperature_end_K, boil_solution_temperature(&mixed, heat, 400), 0, 1e-6);
    assert_int_equal(h.additions[0].kind, BOIL_ACTION_LIQUID);
    assert_close(h.summary.liquid_added_kg, 50, 1e-9, 0);
    boil_history_free(&h);
}

/* Salt sifted into a strong boil is gone in minutes and strengthens it as the sum of masses says; poured on a quiet bath most
   of it lies on the floor. */
static void salt_dissolves_in_the_boil_and_lies_on_a_quiet_floor(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    boil_run_options o = every(5);
    boil_action a = salts_action(300, 6, 600);
    boil_history h = run_actions(&p, 5400, &o, &a, 1);
    print_message("6 kg over ten minutes: at most %.2f kg undissolved, bed %.2f mm\n", h.summary.undissolved_max_kg,
                  1e3 * h.summary.bed_max_m);
    assert_true(h.summary.undissolved_max_kg < 2);
    assert_true(h.rows[h.rows_count - 1].undissolved_kg < 1e-3);
    const boil_row *first = &h.rows[0], *last = &h.rows[h.rows_count - 1];
    double gained = last->naoh_kg + last->nano3_kg + last->nano2_kg - first->naoh_kg - first->nano3_kg - first->nano2_kg;
    assert_close(gained, 6, 0, 1e-3);
    boil_history_free(&h);
    p.heater.input_W = 5e3;
    boil_action dumped = salts_action(600, 40, 20);
    h = run_actions(&p, 1500, &o, &dumped, 1);
    print_message("40 kg dumped on a quiet bath: bed %.1f mm, floor %.0f K over the bath\n", 1e3 * h.summary.bed_max_m,
                  h.summary.bed_superheat_max_K.value);
    assert_true(h.summary.bed_max_m > 0.02);
    assert_close(h.summary.bed_superheat_max_K.value, h.summary.bed_max_m * 5e3 / 0.9 / 0.8, 0.05, 0);
    assert_close(h.additions[0].quiet_poured_kg, 40, 0.02, 0);
    boil_history_free(&h);
}

/* What dissolving NaOH releases at constant temperature in the run equals solid less partial enthalpies: with the bath quiet,
   no heat and no loss, the final temperature follows from the balance of property functions. */
static void salt_brings_its_heat_of_solution(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.heater.input_W = 0;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0.20, CELSIUS(25)};
    p.fittings.mixer_on = true;
    boil_run_options o = every(60);
    boil_action a = salts_action(60, 20, 60);
    memcpy(a.is.salts.blend, (double[]){1, 0, 0}, sizeof a.is.salts.blend);
    boil_history h = run_actions(&p, 7200, &o, &a, 1);
    boil_initial_state c;
    assert_int_equal(boil_plant_initial(&p, &c), BOIL_OK);
    double heat =
        boil_solution_heat(&c.mixture, CELSIUS(25)).enthalpy_J + 20 * boil_salt_solid_enthalpy(BOIL_NAOH, CELSIUS(25));
    boil_mixture mixed = c.mixture;
    mixed.salt[BOIL_NAOH] += 20;
    double T = boil_solution_temperature(&mixed, heat, 310);
    print_message("20 kg of NaOH into 460 kg at 20 wt%% and 25 degC: %.2f degC (by hand from the tables %.2f)\n",
                  h.summary.temperature_end_K - BOIL_ZERO_CELSIUS, T - BOIL_ZERO_CELSIUS);
    assert_close(h.summary.temperature_end_K, T, 0, 0.02);
    boil_history_free(&h);
}

static void splitting_an_addition_changes_nothing(void **state)
{
    (void)state;
    boil_plant p = open_plant(45e3);
    boil_run_options o = every(60);
    boil_action whole = two_gallons_action(300, 240), halves[2] = {two_gallons_action(300, 120), two_gallons_action(420, 120)};
    halves[0].is.water.mass_kg = halves[1].is.water.mass_kg = whole.is.water.mass_kg / 2;
    boil_action liquids[3] = {liquid_action(900, 10, 60, 30), liquid_action(900, 5, 30, 30), liquid_action(930, 5, 30, 30)};
    boil_action salts[3] = {salts_action(1200, 4, 200), salts_action(1200, 2, 100), salts_action(1300, 2, 100)};
    boil_action one[3] = {whole, liquids[0], salts[0]},
                two[6] = {halves[0], halves[1], liquids[1], liquids[2], salts[1], salts[2]};
    boil_history a = run_actions(&p, 2400, &o, one, 3), b = run_actions(&p, 2400, &o, two, 6);
    assert_close(a.summary.temperature_end_K, b.summary.temperature_end_K, 1e-6, 0);
    assert_close(a.summary.bath_mass_end_kg, b.summary.bath_mass_end_kg, 1e-6, 0);
    assert_close(a.summary.steam_total_kg, b.summary.steam_total_kg, 1e-6, 0);
    boil_history_free(&a);
    boil_history_free(&b);
}

static boil_plant controlled_plant(void)
{
    boil_plant p = open_plant(45e3);
    p.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    p.control.set_point_K = CELSIUS(140.5);
    p.control.differential_K = 0.6;
    p.control.rate_kg_s = 0.04;
    return p;
}

/* On/off: boil-off raises the boiling point at r1, an open valve lowers it at r2. The sensor lags a ramp by its own lag; the
   valve actions a dead time late; water takes the mixing time to arrive. So the temperature leaves the band by r (lag + dead
   time), and at the lower end by r2 times the mixing time more. */
static void automatic_water_holds_the_boiling_point(void **state)
{
    (void)state;
    boil_plant p = controlled_plant();
    boil_run_options o = every(10);
    boil_history h = run_actions(&p, 8 * 3600, &o, NULL, 0);
    const boil_summary *s = &h.summary;
    const boil_water_control *c = &p.control;
    begun n;
    begun_of(&n, &p);
    double slope = n.v.solution.slope.water;
    double off = s->vented_total_kg / h.end_s, r1 = -slope * off, r2 = -slope * (c->rate_kg_s * 1.1 - off);
    double late = c->dead_time_s + c->sensor_lag_s, mixing;
    boil_overturn_pool pool = {boil_tank_area(&p.tank), n.v.solution.volume_m3 / boil_tank_area(&p.tank),
                               n.v.solution.density_kg_m3, boil_water_density(c->water_K), n.v.pool.stirring_W_kg};
    mixing = boil_overturn_time(&(boil_overturn){p.layer.turnover_factor, p.layer.mixing_efficiency}, &pool);
    double top = c->set_point_K + c->differential_K / 2 + r1 * (late + mixing);
    double bottom = c->set_point_K - c->differential_K / 2 - r2 * (late + mixing);
    print_message("automatic water: %.2f to %.2f degC (closed form %.2f to %.2f), %zu openings in 8 h\n",
                  s->temperature_min_K.value - BOIL_ZERO_CELSIUS, s->temperature_max_K.value - BOIL_ZERO_CELSIUS,
                  bottom - BOIL_ZERO_CELSIUS, top - BOIL_ZERO_CELSIUS, s->valve_openings);
    assert_true(s->temperature_max_K.value <= top && s->temperature_max_K.value > c->set_point_K);
    assert_true(s->temperature_min_K.value >= bottom && s->temperature_min_K.value < c->set_point_K);
    /* Water added is what left, but for what the bath still holds more or less of. */
    double held = s->bath_mass_end_kg - s->bath_mass_start_kg + h.rows[h.rows_count - 1].layer_kg;
    assert_close(s->water_controlled_kg - s->vented_total_kg, held, 0, 1e-9 * s->bath_mass_start_kg);
    boil_history_free(&h);
}

static void switching_times_do_not_depend_on_the_tolerance(void **state)
{
    (void)state;
    boil_plant p = controlled_plant();
    boil_run_options o = boil_run_options_default(), half = o;
    half.tolerance /= 2;
    boil_action a = plate_action(3600, 1);
    a.is.load.immersed_s = 1200;
    boil_history h = run_actions(&p, 4 * 3600, &o, &a, 1), finer = run_actions(&p, 4 * 3600, &half, &a, 1);
    assert_true(h.valve_count > 6);
    assert_int_equal(h.valve_count, finer.valve_count);
    for (size_t i = 0; i < h.valve_count; i++)
        assert_close(h.valve_s[i], finer.valve_s[i], 0, 0.1);
    boil_history_free(&h);
    boil_history_free(&finer);
}

static void a_proportioned_valve_settles(void **state)
{
    (void)state;
    boil_plant p = controlled_plant();
    p.control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    boil_run_options o = every(10);
    boil_history h = run_actions(&p, 8 * 3600, &o, NULL, 0);
    double share = h.summary.vented_total_kg / h.end_s / p.control.rate_kg_s;
    print_message("time-proportioned: open %.3f of the time, boil-off wants %.3f\n", h.summary.valve_open_share, share);
    assert_close(h.summary.valve_open_share, share, 0.03, 0);
    assert_true(fabs(h.summary.temperature_end_K - p.control.set_point_K) < p.control.band_K / 2);
    boil_history_free(&h);
}

/* From the loss of a boil to some seconds after its return the valve does not move; then it opens. */
static void waits_for_a_steady_boil(const boil_history *h)
{
    const double rounding_s = 1e-6;
    assert_true(h->quiet_count > 0 && isfinite(h->quiet[0].end_s));
    double free_s = h->quiet[0].end_s + BOIL_WATER_CONTROL_STEADY_S;
    size_t opens = 0;
    for (size_t i = 0; i < h->valve_count; i++) {
        assert_false(h->valve_s[i] > h->quiet[0].start_s + rounding_s && h->valve_s[i] < free_s - rounding_s);
        opens += fabs(h->valve_s[i] - free_s) <= rounding_s;
    }
    assert_int_equal(opens, 1);
}

/* The interlock shuts the valve the moment the boil is lost; without it water runs onto a quiet bath. */
static void the_interlock_keeps_water_off_a_quiet_bath(void **state)
{
    (void)state;
    boil_plant p = controlled_plant();
    p.control.set_point_K = CELSIUS(138);
    boil_run_options o = every(10);
    boil_action a = plate_action(600, 3);
    boil_history h = run_actions(&p, 1800, &o, &a, 1);
    assert_true(h.summary.valve_quiet_kg == 0);
    assert_true(h.summary.layer_max_kg.value < 2);
    waits_for_a_steady_boil(&h);
    boil_history_free(&h);
    p.control.only_while_boiling = false;
    h = run_actions(&p, 1800, &o, &a, 1);
    assert_true(h.summary.valve_quiet_kg > 1);
    boil_history_free(&h);
}

static void a_low_level_cuts_the_heat(void **state)
{
    (void)state;
    boil_plant p = controlled_plant();
    p.control.set_point_K = CELSIUS(170);
    p.control.low_level_m = 0.47;
    boil_run_options o = every(60);
    boil_history h = run_actions(&p, 10 * 3600, &o, NULL, 0);
    size_t i = 0;
    while (i < h.rows_count && h.rows[i].heater_W > 1)
        i++;
    assert_true(i < h.rows_count);
    assert_close(h.rows[i].still_level_m, 0.47, 0, 0.003); /* the burner's lag, and rows a minute apart */
    assert_true(h.rows[h.rows_count - 1].heater_W < 1);
    boil_history_free(&h);
}

/* Drag-out: what the clause says, per area, with the salts of the bath in it. */
static void drag_out_takes_bath_liquid(void **state)
{
    (void)state;
    boil_plant p = open_plant(45e3);
    boil_run_options o = every(60);
    boil_action a = plate_action(300, 1);
    a.is.load.drag_out_kg_m2 = 0.2;
    a.is.load.immersed_s = 600;
    boil_history h = run_actions(&p, 1500, &o, &a, 1);
    assert_close(h.summary.drag_out_kg, 0.2 * 0.963, 1e-3, 0);
    assert_close(h.loads[0].drag_out_kg, h.summary.drag_out_kg, 1e-9, 0);
    assert_close(h.summary.drag_out_salts_kg, 0.52 * h.summary.drag_out_kg, 0.03, 0);
    boil_history_free(&h);
}

/* Heating up by a steam coil without losses: t = M c/UA ln[(Ts - T0)/(Ts - T1)] (Kern, Process Heat Transfer, eq. 18.5 form),
   with the mean heat capacity of the solution between T0 and T1. */
static void a_steam_coil_heats_exponentially(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.charge.temperature_K = CELSIUS(40);
    p.heater = boil_heater_default(BOIL_HEAT_STEAM);
    p.heater.lag_s = 0;
    p.heater.coil_area_m2 = 1.5;
    p.heater.steam_K = CELSIUS(165);
    boil_run_options o = every(10);
    boil_history h = run_actions(&p, 2 * 3600, &o, NULL, 0);
    boil_initial_state c;
    assert_int_equal(boil_plant_initial(&p, &c), BOIL_OK);
    double T0 = CELSIUS(40), T1 = CELSIUS(120);
    double mean = (boil_solution_heat(&c.mixture, T1).enthalpy_J - boil_solution_heat(&c.mixture, T0).enthalpy_J) / (T1 - T0);
    double by_hand = mean / (1.5 * 800) * log((CELSIUS(165) - T0) / (CELSIUS(165) - T1));
    size_t i = 0;
    while (i < h.rows_count && h.rows[i].temperature_K < T1)
        i++;
    print_message("steam coil: 40 to 120 degC in %.0f s (by hand %.0f)\n", h.rows[i].time_s, by_hand);
    assert_close(h.rows[i].time_s, by_hand, 0.02, 10);
    boil_history_free(&h);
}

/* A lid on a cooling bath keeps its water: most of what condenses drips back and floats. */
static void a_lid_saves_heat_and_makes_a_layer(void **state)
{
    (void)state;
    boil_plant p = open_plant(30e3);
    boil_run_options o = every(60);
    boil_action off[2] = {dial_action(0, 0), switch_action(60, BOIL_ACTION_LID, true)};
    boil_history open = run_actions(&p, 24 * 3600, &o, off, 1), lidded = run_actions(&p, 24 * 3600, &o, off, 2);
    print_message("a day off: open %.1f degC and %.1f kg lost; under a lid %.1f degC, %.1f kg lost, %.1f kg dripped back, "
                  "layer %.1f kg\n",
                  open.summary.temperature_end_K - 273.15, open.summary.vented_total_kg,
                  lidded.summary.temperature_end_K - 273.15, lidded.summary.vented_total_kg, lidded.summary.condensate_kg,
                  lidded.summary.layer_max_kg.value);
    assert_true(lidded.summary.temperature_end_K > open.summary.temperature_end_K + 5);
    assert_true(lidded.summary.condensate_kg > 1);
    assert_true(lidded.summary.layer_max_kg.value > 0.5);
    boil_history_free(&open);
    boil_history_free(&lidded);
}

/* What drips back onto a boil floats as a film of a few tenths of a gram, which boils off: its heat goes with the vapour, and does not
   gather in it. Later water finds it as it should be. */
static void what_drips_onto_a_boil_boils(void **state)
{
    (void)state;
    boil_plant p = open_plant(8.5e3);
    boil_run_options o = boil_run_options_default();
    p.tank.length_m = 0.7;
    p.fittings.lid_on = true;
    o.row_interval_s = 60;
    boil_action water = two_gallons_action(1500, 60);
    boil_history h = run_actions(&p, 1800, &o, &water, 1);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    size_t dripping = 0;
    for (size_t i = 1; i < h.rows_count && h.rows[i].time_s < 1500; i++)
        if (h.rows[i].boiling && h.rows[i].layer_kg > 0) {
            assert_close(h.rows[i].layer_K, boil_water_saturation_temperature(p.ambient.pressure_Pa), 0, 0.1);
            dripping++;
        }
    print_message("%zu minutes with a film of condensate, all at its boil\n", dripping);
    assert_true(dripping > 20);
    boil_history_free(&h);
}

static void the_exhaust_costs_heat_and_the_mixer_stirs_the_layer_in(void **state)
{
    (void)state;
    boil_plant p = open_plant(8e3);
    p.ambient.draught_m_s = 0.6;
    boil_run_options o = every(60);
    boil_action still = switch_action(0, BOIL_ACTION_EXHAUST, false);
    boil_history a = run_actions(&p, 3600, &o, NULL, 0), b = run_actions(&p, 3600, &o, &still, 1);
    assert_true(b.summary.evaporated_total_kg < 0.95 * a.summary.evaporated_total_kg);
    boil_history_free(&a);
    boil_history_free(&b);
    boil_action actions[2] = {two_gallons_action(600, 60), switch_action(900, BOIL_ACTION_MIXER, true)};
    a = run_actions(&p, 1800, &o, actions, 2);
    assert_true(row_at(&a, &o, 840)->layer_kg > 5);
    assert_true(row_at(&a, &o, 1140)->layer_kg < 0.5);
    boil_history_free(&a);
}

/* A 65/35 bath cools under a lid over a night: nitrate crystallises where the saturation table says. */
static void crystals_fall_where_the_table_says(void **state)
{
    (void)state;
    boil_plant p = open_plant(45e3);
    p.charge = (boil_initial_charge){{0.65, 0.35, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), 0};
    boil_run_options o = every(60);
    boil_action off = dial_action(0, 0);
    boil_history h = run_actions(&p, 24 * 3600, &o, &off, 1);
    print_message("65/35 bath: crystals from %.1f degC, after %.1f h; %.1f kg by %.1f degC\n",
                  h.summary.crystals_from_K - 273.15, h.summary.crystals_s / 3600, h.summary.crystals_max_kg,
                  h.summary.temperature_end_K - 273.15);
    assert_true(h.summary.crystals_s > 0);
    assert_close(row_at(&h, &o, h.summary.crystals_s)->temperature_K, h.summary.crystals_from_K, 0, 1);
    assert_true(h.summary.crystals_max_kg > 1);
    assert_true(h.summary.heated_crystals_kg.value != h.summary.heated_crystals_kg.value); /* NaN: none */
    assert_close(h.summary.crystals_fire.value, 0, 0, 1e-6);
    boil_history_free(&h);
}

/* The most of the fire that was on while crystals lay there: what the dial said then, not what it says later. Without any, none. */
static void fire_over_crystals_is_as_the_dial(void **state)
{
    (void)state;
    boil_plant p = open_plant(45e3);
    p.charge = (boil_initial_charge){{0.65, 0.35, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(40)};
    p.heater.dial = 0.1;
    boil_run_options o = every(60);
    boil_action turned[2] = {dial_action(1800, 0.3), dial_action(7 * 3600, 1)};
    boil_history h = run_actions(&p, 8 * 3600, &o, turned, 2);
    assert_true(row_at(&h, &o, 1800)->crystals_kg > 1);
    assert_close(row_at(&h, &o, 7 * 3600 - 60)->crystals_kg, 0, 0, 0);
    assert_close(h.summary.crystals_fire.value, 0.3, 1e-3, 0);
    assert_true(h.summary.crystals_fire.time_s > 1800);
    boil_history_free(&h);
    p.charge.temperature_K = 0;
    h = run_actions(&p, 1800, &o, turned, 1);
    assert_true(isnan(h.summary.crystals_fire.value));
    boil_history_free(&h);
}

/* What floats in a quiet spell at the most is what its rows show at the most: the spell's own, not that of the boil. */
static void a_spell_keeps_its_heaviest_layer(void **state)
{
    (void)state;
    boil_plant p = open_plant(45e3);
    p.charge.temperature_K = CELSIUS(120);
    p.heater.dial = 0.3;
    boil_run_options o = every(1);
    boil_action a[2] = {two_gallons_action(60, 60), dial_action(300, 1)};
    boil_history h = run_actions(&p, 3600, &o, a, 2);
    double most_kg = 0;
    for (size_t i = 0; i < h.rows_count; i++)
        most_kg = h.rows[i].boiling ? most_kg : fmax(most_kg, h.rows[i].layer_kg);
    assert_true(h.quiet_count > 0 && most_kg > 5);
    assert_close(h.quiet[0].layer_max_kg, most_kg, 1e-3, 0);
    boil_history_free(&h);
}

/* Over random plants: a tenth more heat never lengthens a recovery, a tenth more steel never shortens it. */
static void more_heat_never_hurts_and_more_steel_never_helps(void **state)
{
    (void)state;
    gsl_qrng *q = gsl_qrng_alloc(gsl_qrng_sobol, 8);
    boil_run_options o = boil_run_options_default();
    o.tolerance = 1e-6;
    int compared = 0, tried = sampled(500, 50);
    for (int i = 0; i < tried; i++) {
        double u[8];
        gsl_qrng_get(q, u);
        boil_plant p = open_plant((15e3 + 60e3 * u[0]) * (0.5 + u[1]));
        p.tank.length_m = 1.5 * (0.5 + u[1]);
        p.tank.level_m = 0.25 + 0.5 * u[2];
        p.charge =
            (boil_initial_charge){{1 - 0.4 * u[3], 0.4 * u[3], 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(125 + 20 * u[4]), 0};
        boil_action a = plate_action(120, 0.4 + 3 * u[5]);
        a.is.load.size_m = 0.002 + 0.06 * u[6];
        a.is.load.coefficient_W_m2K = 0;
        a.is.load.lowering_s = 5;
        a.is.load.rinse_kg_m2 = 0.1 * u[7];
        boil_history base = run_actions(&p, 1500, &o, &a, 1);
        boil_plant hotter = p;
        hotter.heater.input_W *= 1.1;
        boil_history more_heat = run_actions(&hotter, 1500, &o, &a, 1);
        boil_action heavier = a;
        heavier.is.load.mass_kg *= 1.1;
        boil_history more_steel = run_actions(&p, 1500, &o, &heavier, 1);
        double r = base.loads[0].recovery_s;
        if (!isnan(r)) {
            compared++;
            assert_true(more_heat.loads[0].recovery_s <= r + 1e-3);
            assert_true(isnan(more_steel.loads[0].recovery_s) || more_steel.loads[0].recovery_s >= r - 1e-3);
        }
        boil_history_free(&base);
        boil_history_free(&more_heat);
        boil_history_free(&more_steel);
    }
    gsl_qrng_free(q);
    print_message("compared in %d of %d plants\n", compared, tried);
    assert_true(compared > tried / 2);
}

/* Water floats for seconds on the boil that it is thrown into. A load meets it when it goes in with it, a little after or within the
   minute; not when it goes in before, nor later. */
static void a_load_meets_what_floated_within_a_minute(void **state)
{
    (void)state;
    const struct {
        double load_s;
        bool met;
    } all[] = {{110, false}, {122, true}, {170, true}, {260, false}};
    boil_plant p = low_plant();
    p.limits.freeboard_m = 0.3;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        const boil_action acts[] = {water_action(120, 4, 10), plate_action(all[i].load_s, 0.02)};
        boil_run_options o = boil_run_options_default();
        boil_history h = run_actions(&p, 400, &o, acts, 2);
        const boil_watched *w = &h.summary.watched[BOIL_WATCH_WATER_FAST];
        print_message("  load at %.0f s: worst %.2f at %.1f s, %.1f s\n", all[i].load_s, w->worst.value, w->worst.time_s,
                      w->outside_s);
        assert_true(w->worst.value > 0 && w->outside_s > 0);
        assert_int_equal(w->met, all[i].met);
        boil_history_free(&h);
    }
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(liquid_cools_by_its_enthalpy),
        cmocka_unit_test(salt_dissolves_in_the_boil_and_lies_on_a_quiet_floor),
        cmocka_unit_test(salt_brings_its_heat_of_solution),
        cmocka_unit_test(splitting_an_addition_changes_nothing),
        cmocka_unit_test(automatic_water_holds_the_boiling_point),
        cmocka_unit_test(switching_times_do_not_depend_on_the_tolerance),
        cmocka_unit_test(a_proportioned_valve_settles),
        cmocka_unit_test(the_interlock_keeps_water_off_a_quiet_bath),
        cmocka_unit_test(a_low_level_cuts_the_heat),
        cmocka_unit_test(drag_out_takes_bath_liquid),
        cmocka_unit_test(a_steam_coil_heats_exponentially),
        cmocka_unit_test(a_lid_saves_heat_and_makes_a_layer),
        cmocka_unit_test(what_drips_onto_a_boil_boils),
        cmocka_unit_test(the_exhaust_costs_heat_and_the_mixer_stirs_the_layer_in),
        cmocka_unit_test(crystals_fall_where_the_table_says),
        cmocka_unit_test(fire_over_crystals_is_as_the_dial),
        cmocka_unit_test(a_spell_keeps_its_heaviest_layer),
        cmocka_unit_test(more_heat_never_hurts_and_more_steel_never_helps),
        cmocka_unit_test(a_load_meets_what_floated_within_a_minute),
    };
    return cmocka_run_group_tests_name("additions", tests, NULL, NULL);
}
