#include "random/invariants.h"

#include <math.h>
#include <string.h>

#include "random/figures.h"
#include "random/moisture.h"
#include "random/told.h"
#include "random/variants.h"

const char *const invariant_words[HOLDS_ALL] = {
    [HOLDS_READ] = "read",   [HOLDS_RUN] = "carried out", [HOLDS_CLOSED] = "closed",     [HOLDS_SOUND] = "sound",
    [HOLDS_RIM] = "rim",     [HOLDS_HEAT] = "more heat",  [HOLDS_LOAD] = "heavier load", [HOLDS_UNITS] = "units",
    [HOLDS_CLOCK] = "clock", [HOLDS_ORDER] = "order",     [HOLDS_TWO] = "two pours",     [HOLDS_GRAM] = "a gram",
    [HOLDS_SET] = "run set", [HOLDS_PROGRAM] = "formats",
};

/* Of the likely run's own figures; what is integrated differently by a rounding ends that far apart at the most. */
#define TOLERANCES 10

typedef struct {
    const draft *d;
    const invariant_means *m;
    invariant asked;
    verdict_of *v;
    scenario s;
    boil_run_options options;
    boil_history h;
    boil_findings found;
} trial;

#define BROKEN(t, of, ...)                                                                                                     \
    ((t)->v->broken[of] ? (void)0                                                                                              \
                        : ((t)->v->broken[of] = true, (void)snprintf((t)->v->why[of], sizeof(t)->v->why[of], __VA_ARGS__)))

static bool asks(const trial *t, invariant of)
{
    return t->asked == HOLDS_ALL || t->asked == of;
}

/* Of what there was or crossed: what a day of rounding adds up to, with room; judgement. Of every run of a set. */
#define CLOSES_TO 1e-9

static void closed(trial *t, boil_closures c, const boil_history *h, invariant of)
{
    const char *which = boil_closures_name(c);
    const boil_balance *b = &h->balance;
    if (!(fabs(b->water.closure) <= CLOSES_TO && fabs(b->salts.closure) <= CLOSES_TO && fabs(b->energy.closure) <= CLOSES_TO))
        BROKEN(t, of, "%s: water %.2g, salts %.2g, energy %.2g, after %zu changes of mode", which, b->water.closure,
               b->salts.closure, b->energy.closure, h->mode_changes);
}

/* By which it is asked whether water may come from the air; of a run of the set the largest that there is. */
static double elevation(const trial *t, invariant of)
{
    const double most = 1.10;
    return of == HOLDS_SOUND ? t->s.plant.elevation_factor : most;
}

/* Rounding may leave a mass a hair below nothing, and a bath gives off less than nothing where it takes water from the air. */
static void sound(trial *t, const char *which, const boil_history *h, invariant of)
{
    const boil_summary *s = &h->summary;
    double hair = 1e-9 * s->bath_mass_start_kg, taken = moisture_most_kg(&t->s.plant, h, elevation(t, of));
    const double finite[] = {s->temperature_end_K,     s->bath_mass_end_kg, s->level_max_m.value,
                             s->freeboard_min_m.value, s->heater_total_J,   h->end_s};
    const double masses[] = {s->bath_mass_end_kg,
                             s->steam_total_kg,
                             s->vented_total_kg + taken,
                             s->evaporated_total_kg + taken,
                             s->drag_out_kg,
                             s->drag_out_salts_kg,
                             s->layer_boiled_total_kg,
                             s->water_controlled_kg,
                             s->condensate_kg,
                             s->taken_kg,
                             s->released_kg,
                             s->crystals_max_kg};
    for (size_t i = 0; i < sizeof finite / sizeof finite[0]; i++)
        if (!isfinite(finite[i]))
            BROKEN(t, of, "%s: figure %zu is %g", which, i, finite[i]);
    for (size_t i = 0; i < sizeof masses / sizeof masses[0]; i++)
        if (!(masses[i] >= -hair))
            BROKEN(t, of, "%s: mass %zu is %g kg", which, i, masses[i]);
}

static void rim(trial *t)
{
    const boil_finding *over = NULL;
    const boil_summary *s = &t->h.summary;
    double rounding_kg_s = 1e-15 * s->bath_mass_start_kg;
    for (size_t i = 0; i < t->found.count; i++)
        if (strcmp(t->found.list[i].id, "overflow") == 0)
            over = &t->found.list[i];
    if (s->level_max_m.value > t->s.plant.tank.depth_m * (1 + 1e-9) && (over == NULL || over->time_s > s->level_max_m.time_s))
        BROKEN(t, HOLDS_RIM, "level %.6g m at %.0f s, rim %.6g m, no such finding by then", s->level_max_m.value,
               s->level_max_m.time_s, t->s.plant.tank.depth_m);
    for (size_t i = 0; i < t->h.rows_count; i++) {
        const boil_row *r = &t->h.rows[i];
        if (r->freeboard_m < -1e-9 && (over == NULL || over->time_s > r->time_s + 1e-9))
            BROKEN(t, HOLDS_RIM, "row at %.0f s lies %.3g m over the rim, no such finding by then", r->time_s, -r->freeboard_m);
        if (r->level_m > s->level_max_m.value * (1 + TOLD_CREST))
            BROKEN(t, HOLDS_RIM, "row at %.0f s lies %.3g m above the highest level, of %.1f s", r->time_s,
                   r->level_m - s->level_max_m.value, s->level_max_m.time_s);
        if (!(r->water_kg >= 0) || !(r->layer_kg >= 0) || !isfinite(r->temperature_K) || !isfinite(r->level_m))
            BROKEN(t, HOLDS_SOUND, "row at %.0f s: water %g kg, layer %g kg, %g K, level %g m", r->time_s, r->water_kg,
                   r->layer_kg, r->temperature_K, r->level_m);
        if (r->evaporated_kg_s < -rounding_kg_s && !moisture_may_come(&t->s.plant, r, elevation(t, HOLDS_SOUND)))
            BROKEN(t, HOLDS_SOUND, "row at %.0f s: %.2g kg/s come from air that is drier", r->time_s, -r->evaporated_kg_s);
    }
}

/* What two roundings of one recovery may lie apart, s. */
#define HAIR_S 1e-3

static void recoveries(trial *t)
{
    if (!asks(t, HOLDS_HEAT) && !asks(t, HOLDS_LOAD))
        return;
    double usual = variant_recovery_s(&t->s.plant, &t->s.schedule, 1, 1);
    if (isnan(usual))
        return;
    double hotter = variant_recovery_s(&t->s.plant, &t->s.schedule, 1.1, 1);
    double heavier = variant_recovery_s(&t->s.plant, &t->s.schedule, 1, 1.1);
    if (hotter > usual + HAIR_S)
        BROKEN(t, HOLDS_HEAT, "the first load alone is back after %.4f s, with a tenth more heat after %.4f s", usual, hotter);
    if (heavier < usual - HAIR_S)
        BROKEN(t, HOLDS_LOAD, "the first load alone is back after %.4f s, a tenth heavier after %.4f s", usual, heavier);
}

static bool found_of(const trial *t, const boil_schedule *s, const boil_history *h, boil_findings *found)
{
    return boil_findings_of(&t->s.plant, s, NULL, h, NULL, 0, found, NULL) == BOIL_OK;
}

/* Ids and grades, in any order: ranks differ by the last digit. */
static const boil_finding *lacking(const boil_findings *one, const boil_findings *other)
{
    for (size_t i = 0; i < one->count; i++) {
        size_t k = 0;
        while (k < other->count &&
               (other->list[k].kind != one->list[i].kind || other->list[k].severity != one->list[i].severity))
            k++;
        if (k == other->count)
            return &one->list[i];
    }
    return NULL;
}

/* From the room to the boil it takes 65 J: so much steam is not made, and while it is not, within the two seconds that 2 mm take, it
   does not lift the bath; a quiet spell lasts as much longer as the spare heat takes to make up for it. And what it displaces, which
   it lifts by. All this twice over, for it is reckoned roughly. */
static figures_more of_a_gram(const trial *t)
{
    const boil_summary *s = &t->h.summary;
    double heat_J = VARIANT_GRAM_KG * 500 * 130, heater_W = fmax(1, s->heater_total_J / t->h.end_s);
    double swell_m = s->level_max_m.value - s->still_level_min_m.value;
    double displaced_m = VARIANT_GRAM_KG / 7850 / boil_tank_area(&t->s.plant.tank);
    double spare_W =
        1 + s->steam_total_kg * 2.2e6 /
                fmax(1, s->boiling_share * t->h.end_s); /* that makes steam, in the mean; as a boil returns a fifth of it */
    return (figures_more){2 * heat_J / 2.2e6, 2 * (displaced_m + heat_J / 2 / heater_W * swell_m), 5 * heat_J / spare_W};
}

static void same_run(trial *t, const boil_schedule *s, const boil_history *h, invariant of)
{
    figures_more more = of == HOLDS_GRAM ? of_a_gram(t) : (figures_more){0, 0, 0};
    figures_apart apart = figures_compare(&t->s.plant, &t->h, h, more);
    boil_findings found;
    if (apart.apart > TOLERANCES * t->options.tolerance)
        BROKEN(t, of, "%s is %.9g, and %.9g: %.2g of its size apart", apart.name, apart.one, apart.other, apart.apart);
    if (!found_of(t, s, h, &found))
        return;
    const boil_finding *gone = lacking(&t->found, &found), *come = lacking(&found, &t->found);
    if (gone != NULL)
        BROKEN(t, of, "no longer %s %s", boil_severity_word(gone->severity), gone->id);
    else if (come != NULL)
        BROKEN(t, of, "now %s %s", boil_severity_word(come->severity), come->id);
    boil_findings_free(&found);
}

static void run_as(trial *t, const boil_plant *p, const boil_schedule *s, invariant of)
{
    boil_history h;
    boil_outcome ended = boil_run(p, s, &t->options, &h);
    if (ended != BOIL_OK) {
        BROKEN(t, of, "%s", boil_outcome_text(ended));
        return;
    }
    same_run(t, s, &h, of);
    boil_history_free(&h);
}

static bool read_as(const trial *t, const draft_style *style, scenario *s)
{
    char path[500];
    messages m;
    messages_init(&m);
    snprintf(path, sizeof path, "%s.bath", t->m->scratch);
    bool good = draft_write_file(t->d, style, path) && scenario_read(path, s, &m) == BOIL_OK;
    messages_free(&m);
    return good;
}

static void written_as(trial *t, draft_style style, invariant of)
{
    scenario s;
    if (!asks(t, of))
        return;
    if (!read_as(t, &style, &s))
        BROKEN(t, HOLDS_READ, "refused in other %s", invariant_words[of]);
    else
        run_as(t, &s.plant, &s.schedule, of);
    scenario_free(&s);
}

static void changed(trial *t)
{
    boil_schedule other;
    if (asks(t, HOLDS_TWO) && variant_two_pours(&t->s.schedule, &other)) {
        run_as(t, &t->s.plant, &other, HOLDS_TWO);
        boil_schedule_free(&other);
    }
    if (asks(t, HOLDS_GRAM) && variant_gram(&t->s.schedule, &t->h, &other)) {
        run_as(t, &t->s.plant, &other, HOLDS_GRAM);
        boil_schedule_free(&other);
    }
}

static void whole_set(trial *t)
{
    boil_run_set set;
    boil_run_options traced = t->options;
    traced.traced = BOIL_CLOSURES;
    if (!asks(t, HOLDS_SET) || boil_run_set_of(&t->s.plant, &t->s.schedule, &traced, &set) != BOIL_OK)
        return;
    for (size_t i = 0; i < set.count; i++) {
        const char *name = boil_closures_name(set.other[i].closures);
        if (!set.other[i].refused) {
            closed(t, set.other[i].closures, &set.other[i].history, HOLDS_SET);
            sound(t, name, &set.other[i].history, HOLDS_SET);
        }
    }
    boil_run_set_free(&set);
}

static void told(trial *t)
{
    char path[500];
    if (!asks(t, HOLDS_PROGRAM))
        return;
    snprintf(path, sizeof path, "%s.bath", t->m->scratch);
    if (!draft_write_file(t->d, &(draft_style){0}, path))
        return;
    told_text differs = told_alike(t->m->program, path, &t->s);
    if (differs.text[0] != '\0')
        BROKEN(t, HOLDS_PROGRAM, "%s", differs.text);
}

static void judge_run(trial *t)
{
    t->v->hours = t->h.end_s / 3600;
    if (t->h.end == BOIL_RUN_FAILED)
        BROKEN(t, HOLDS_RUN, "it failed at %.1f s", t->h.end_s);
    closed(t, BOIL_CLOSURES_LIKELY, &t->h, HOLDS_CLOSED);
    sound(t, "likely", &t->h, HOLDS_SOUND);
    rim(t);
    recoveries(t);
    written_as(t, (draft_style){.units = 1}, HOLDS_UNITS);
    written_as(t, (draft_style){.later_s = 5 * 3600 + 1020}, HOLDS_CLOCK);
    written_as(t, (draft_style){.order = 1}, HOLDS_ORDER);
    changed(t);
    if (t->m->whole) {
        whole_set(t);
        told(t);
    }
}

void invariants_judge(const draft *d, const invariant_means *m, invariant asked, verdict_of *out)
{
    trial t = {.d = d, .m = m, .asked = asked, .v = out, .options = boil_run_options_default()};
    *out = (verdict_of){.valid = false};
    t.options.row_interval_s = 10;
    if (read_as(&t, &(draft_style){0}, &t.s)) {
        out->valid = true;
        boil_outcome ended = boil_run(&t.s.plant, &t.s.schedule, &t.options, &t.h);
        if (ended != BOIL_OK)
            BROKEN(&t, HOLDS_RUN, "%s", boil_outcome_text(ended));
        else if (found_of(&t, &t.s.schedule, &t.h, &t.found)) {
            judge_run(&t);
            boil_findings_free(&t.found);
        }
        if (ended == BOIL_OK)
            boil_history_free(&t.h);
    }
    scenario_free(&t.s);
}
