#include "commands/compare/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "describe/listing.h"
#include "findings/run_set.h"

static bool same_words(const compare_answer *c, size_t setting, unit_system s)
{
    return strcmp(setting_words_of(c->a->scenario, setting, s).text, setting_words_of(c->b->scenario, setting, s).text) == 0;
}

/* What differs in its fourth digit; a default and the same in other units may differ by rounding. */
bool compare_setting_differs(const compare_answer *c, size_t setting)
{
    const scenario_setting *in_a = &c->a->scenario->settings[setting], *in_b = &c->b->scenario->settings[setting];
    key_kind kind = in_a->key->kind;
    if (kind == KEY_TITLE || kind == KEY_PATH)
        return false;
    if (in_a->state == SETTING_ABSENT || in_b->state == SETTING_ABSENT)
        return (in_a->state == SETTING_ABSENT) != (in_b->state == SETTING_ABSENT);
    return !same_words(c, setting, UNITS_US) || !same_words(c, setting, UNITS_SI);
}

#define SAME_TIME_S 1e-6

/* What the words of a load may leave out. */
static const size_t load_numbers[] = {
    offsetof(boil_load, mass_kg),           offsetof(boil_load, size_m),        offsetof(boil_load, tube_wall_m),
    offsetof(boil_load, packed_depth_m),    offsetof(boil_load, temperature_K), offsetof(boil_load, immersed_s),
    offsetof(boil_load, latest_s),          offsetof(boil_load, basket_kg),     offsetof(boil_load, lowering_s),
    offsetof(boil_load, coefficient_W_m2K), offsetof(boil_load, area_m2),       offsetof(boil_load, rinse_kg_m2),
    offsetof(boil_load, drag_out_kg_m2),
};

static double number_at(const boil_load *l, size_t where)
{
    return *(const double *)(const void *)((const char *)l + where);
}

/* Infinities are the same, and so are numbers that differ by rounding. */
static bool same(double x, double y)
{
    return x == y || fabs(x - y) <= 1e-9 * fabs(x);
}

static bool same_load(const boil_load *a, const boil_load *b)
{
    for (size_t i = 0; i < sizeof load_numbers / sizeof load_numbers[0]; i++)
        if (!same(number_at(a, load_numbers[i]), number_at(b, load_numbers[i])))
            return false;
    return a->at_boil == b->at_boil;
}

static bool same_action(const scenario *s, size_t i, const scenario *t, size_t j)
{
    const boil_action *a = &s->schedule.actions[i], *b = &t->schedule.actions[j];
    if (a->kind != b->kind)
        return false;
    if (action_load_of(a) != NULL && !same_load(&a->is.load, &b->is.load))
        return false;
    scenario as_a = *t; /* clock times in words count from the same start */
    as_a.start_s = s->start_s;
    return strcmp(action_name_of(s, i).text, action_name_of(t, j).text) == 0 &&
           strcmp(action_details(s, i, ACTION_BOTH).text, action_details(&as_a, j, ACTION_BOTH).text) == 0;
}

/* Each action of the other may answer for one at the same time; both schedules stand in the order of time. */
static size_t only_in(const scenario *s, const scenario *other, bool in_a, compare_action *list)
{
    const boil_schedule *theirs = &other->schedule;
    size_t n = 0, first = 0, m = theirs->count;
    bool *taken = memory_needed(calloc(m + 1, sizeof *taken));
    for (size_t i = 0; taken != NULL && i < s->schedule.count; i++) {
        double time_s = s->schedule.actions[i].time_s;
        while (first < m && theirs->actions[first].time_s < time_s - SAME_TIME_S)
            first++;
        size_t j = first;
        while (j < m && theirs->actions[j].time_s <= time_s + SAME_TIME_S && (taken[j] || !same_action(s, i, other, j)))
            j++;
        if (j < m && theirs->actions[j].time_s <= time_s + SAME_TIME_S)
            taken[j] = true;
        else
            list[n++] = (compare_action){s, i, in_a};
    }
    free(taken);
    return n;
}

static int by_time(const void *left, const void *right)
{
    const compare_action *l = left, *r = right;
    double a = l->of->schedule.actions[l->action].time_s, b = r->of->schedule.actions[r->action].time_s;
    if (a != b)
        return a < b ? -1 : 1;
    if (l->in_a != r->in_a)
        return l->in_a ? -1 : 1;
    return l->action < r->action ? -1 : 1;
}

compare_action *compare_actions(const compare_answer *c, size_t *count)
{
    const scenario *a = c->a->scenario, *b = c->b->scenario;
    compare_action *list = memory_needed(malloc((a->schedule.count + b->schedule.count + 1) * sizeof *list));
    *count = 0;
    if (list == NULL)
        return NULL;
    *count = only_in(a, b, true, list);
    *count += only_in(b, a, false, list + *count);
    qsort(list, *count, sizeof *list, by_time);
    return list;
}

static double gravest_freeboard_min(const carried_out *o)
{
    return boil_run_set_least_freeboard(&o->set)->summary.freeboard_min_m.value;
}

static double quiet_time(const carried_out *o)
{
    return (1 - o->central.summary.boiling_share) * o->central.end_s;
}

static double slowest_load(const carried_out *o)
{
    return boil_history_recoveries(&o->central, o->scenario->plant.limits.recovery_s).slowest_s;
}

static double water_added(const carried_out *o)
{
    return o->central.summary.water_added_kg + o->central.summary.water_controlled_kg;
}

static double heat_put_in(const carried_out *o)
{
    return o->central.end_s > 0 ? o->central.summary.input_total_J / o->central.end_s : (double)NAN;
}

/* clang-format off */
#define AT(member) .where = offsetof(carried_out, member)
static const compare_measure measures[] = {
    {"slowest_load_s", "slowest boil back", DIM_TIME, .of = slowest_load, .always = true},
    {"freeboard_min_m", "least freeboard", DIM_LENGTH, AT(central.summary.freeboard_min_m.value), .always = true},
    {"gravest_freeboard_min_m", " in the gravest run", DIM_LENGTH, .of = gravest_freeboard_min},
    {"level_max_m", "highest level", DIM_LENGTH, AT(central.summary.level_max_m.value)},
    {"layer_max_kg", "most water afloat", DIM_MASS, AT(central.summary.layer_max_kg.value)},
    {"steam_peak_kg_s", "most steam", DIM_MASS_FLOW, AT(central.summary.steam_peak_kg_s.value),
     .is_steam_peak = true},
    {"quiet_s", "time without boil", DIM_TIME, .of = quiet_time},
    {"boiling_point_end_K", "boils at, end", DIM_TEMPERATURE, AT(central.summary.boiling_point_end_K), .always = true},
    {"still_level_end_m", "level, end", DIM_LENGTH, AT(central.summary.still_level_end_m), .always = true},
    {"temperature_end_K", "temperature, end", DIM_TEMPERATURE, AT(central.summary.temperature_end_K)},
    {"salt_fraction_end", "salts by mass, end", DIM_FRACTION, AT(central.summary.salt_fraction_end)},
    {"water_added_kg", "water added", DIM_MASS, .of = water_added},
    {"steam_total_kg", "steam, in all", DIM_MASS, AT(central.summary.steam_total_kg)},
    {"input_mean_W", "heat, on average", DIM_POWER, .of = heat_put_in},
};
/* clang-format on */

double compare_measure_of(const compare_measure *m, const carried_out *o)
{
    return m->of != NULL ? m->of(o) : *(const double *)(const void *)((const char *)o + m->where);
}

const compare_measure *compare_measured(size_t index)
{
    return index < sizeof measures / sizeof measures[0] ? &measures[index] : NULL;
}

const boil_finding *compare_finding_of(const compare_finding *f)
{
    return f->in[0] != NULL ? f->in[0] : f->in[1];
}

/* Likely where the central run has it so grave, else possible. */
static void take(compare_finding *list, size_t *count, const boil_findings *from, int side, bool likely)
{
    for (size_t i = 0; i < from->count; i++) {
        const boil_finding *f = &from->list[i];
        size_t n = 0;
        while (n < *count && strcmp(compare_finding_of(&list[n])->id, f->id) != 0)
            n++;
        if (n == *count)
            list[(*count)++] = (compare_finding){0};
        if (list[n].in[side] == NULL || f->severity > list[n].in[side]->severity) {
            list[n].in[side] = f;
            list[n].likely[side] = likely;
        }
    }
}

static int gravity(const compare_finding *f)
{
    int a = f->in[0] != NULL ? (int)f->in[0]->severity : -1, b = f->in[1] != NULL ? (int)f->in[1]->severity : -1;
    return a > b ? a : b;
}

static int by_gravity(const void *left, const void *right)
{
    const compare_finding *l = left, *r = right;
    int difference = gravity(r) - gravity(l);
    if (difference != 0)
        return difference;
    return strcmp(compare_finding_of(l)->id, compare_finding_of(r)->id);
}

compare_finding *compare_findings(const compare_answer *c, size_t *count)
{
    size_t most = c->a->found.count + c->a->possible.count + c->b->found.count + c->b->possible.count;
    compare_finding *list = memory_needed(calloc(most + 1, sizeof *list));
    *count = 0;
    if (list == NULL)
        return NULL;
    take(list, count, &c->a->found, 0, true);
    take(list, count, &c->b->found, 1, true);
    take(list, count, &c->a->possible, 0, false);
    take(list, count, &c->b->possible, 1, false);
    qsort(list, *count, sizeof *list, by_gravity);
    return list;
}
