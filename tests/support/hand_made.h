/* support/hand_made.h -- a case and a history written down by hand, in which nothing is found: a test changes what it asks about, and
   no run is made. */
#ifndef SUPPORT_HAND_MADE_H
#define SUPPORT_HAND_MADE_H

#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "support/cases.h"

#define UNKNOWN ((double)NAN)
#define OF_EACH 3

typedef struct {
    boil_plant plant;
    boil_schedule schedule;
    boil_remedies needed;
    boil_history history;
    boil_action actions[OF_EACH];
    boil_act_result acts[OF_EACH];
    boil_load_result loads[OF_EACH];
    boil_addition_result additions[OF_EACH];
    boil_take_result takes[OF_EACH];
    boil_quiet_result quiet[OF_EACH];
} hand_made;

static inline void hand_made_parts(hand_made *m)
{
    for (size_t i = 0; i < OF_EACH; i++) {
        m->actions[i] = plate_action(0, 1);
        m->loads[i] = (boil_load_result){
            .action = i, .left_m = UNKNOWN, .pockets_left_m = UNKNOWN, .lifted_s = UNKNOWN, .boil_lost_s = UNKNOWN};
        m->additions[i] = (boil_addition_result){.action = i,
                                                 .kind = BOIL_ACTION_WATER,
                                                 .missed_by_m = UNKNOWN,
                                                 .missed_by_K = UNKNOWN,
                                                 .boil_lost_s = UNKNOWN,
                                                 .freeboard_min_m = 0.3};
        m->takes[i] = (boil_take_result){.action = i, .missed_by_m = UNKNOWN, .temperature_K = 300};
        m->quiet[i] = (boil_quiet_result){.cause = BOIL_QUIET_LOAD,
                                          .left_m = UNKNOWN,
                                          .left_s = UNKNOWN,
                                          .left_hot_m = UNKNOWN,
                                          .may_overflow_s = UNKNOWN,
                                          .end_left_m = UNKNOWN};
    }
}

static inline void hand_made_summary(boil_summary *of, const boil_plant *p)
{
    const boil_extreme none = {UNKNOWN, UNKNOWN};
    of->boiling_point_start_K = of->boiling_point_end_K = of->temperature_end_K = p->charge.value;
    of->bath_mass_start_kg = 500;
    of->still_level_start_m = p->tank.level_m;
    of->restored_level_m = p->tank.level_m;
    of->freeboard_min_m = (boil_extreme){0.3, 0};
    of->surge_freeboard_m = of->overflow_s = of->dry_wetted_s = of->stored_rise_m = UNKNOWN;
    of->crust_superheat_K = of->heated_crystals_kg = of->dry_steam_kg_s = none;
    of->steam_steady_kg_s = 0.01;
    for (int k = 0; k < BOIL_WATCHES; k++) {
        of->watched[k].worst = none;
        for (int i = 0; i < BOIL_SEVERITIES; i++)
            of->watched[k].from_s[i] = UNKNOWN;
    }
}

/* An hour at the boil, a tank 0.9 m deep, a freeboard limit of 0.15 m, a recovery limit of 120 s. Loads, additions, takes, quiet spells
   count once a test says how many there are. */
static inline void hand_made_begin(hand_made *m)
{
    memset(m, 0, sizeof *m);
    m->plant = open_plant(34e3);
    m->plant.tank.depth_m = 0.9;
    m->plant.limits.freeboard_m = 0.15;
    m->plant.salt_stated = true;
    m->needed = (boil_remedies){UNKNOWN, UNKNOWN};
    boil_schedule_init(&m->schedule, 3600);
    m->schedule.actions = m->actions;
    m->schedule.count = OF_EACH;
    hand_made_parts(m);
    m->history = (boil_history){.acts = m->acts,
                                .loads = m->loads,
                                .additions = m->additions,
                                .takes = m->takes,
                                .quiet = m->quiet,
                                .end = BOIL_RUN_DONE,
                                .end_s = 3600};
    hand_made_summary(&m->history.summary, &m->plant);
}

/* One quiet spell more. */
static inline void hand_made_spell(hand_made *m, double start_s, double end_s, boil_quiet_cause cause)
{
    boil_quiet_result *q = &m->quiet[m->history.quiet_count++];
    q->start_s = start_s;
    q->end_s = end_s;
    q->cause = cause;
}

/* Of what is watched, its worst. */
static inline void hand_made_watch(hand_made *m, boil_watch_kind k, double worst, double time_s)
{
    m->history.summary.watched[k].worst = (boil_extreme){worst, time_s};
}

static inline boil_finding hand_made_in(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return f->list[i];
    return (boil_finding){.severity = BOIL_SEVERITIES};
}

/* Before and behind each list stands what would be found, grave: who looks past an end finds it. */
typedef struct {
    boil_action actions[OF_EACH + 2];
    boil_act_result acts[OF_EACH + 1];
    boil_load_result loads[OF_EACH + 1];
    boil_addition_result additions[OF_EACH + 1];
    boil_take_result takes[OF_EACH + 1];
    boil_quiet_result quiet[1 + OF_EACH + 1];
} hand_made_lists;

static inline boil_load_result hand_made_grave_load(double lifted_s)
{
    return (boil_load_result){.action = OF_EACH + 1,
                              .was_quiet = true,
                              .quiet_before_s = 1e5,
                              .left_m = -1,
                              .may_overflow = true,
                              .lifted_s = lifted_s,
                              .short_s = 1e5,
                              .boil_short_s = 1e5,
                              .pockets_kg = 1,
                              .pockets_left_m = -1,
                              .pockets_overflow = true};
}

static inline boil_quiet_result hand_made_grave_quiet(void)
{
    return (boil_quiet_result){.end_s = UNKNOWN,
                               .cause = BOIL_QUIET_LOAD,
                               .by_thermostat = true,
                               .left_m = -1,
                               .surge_kg_s = 10,
                               .may_overflow_s = 1,
                               .end_left_m = -1,
                               .end_overflows = true};
}

static inline boil_history hand_made_enclose(const hand_made *m, boil_action_kind poured, hand_made_lists *l)
{
    boil_history h = m->history;
    double spell_s = h.quiet_count > 0 ? h.quiet[0].start_s : 0;
    memcpy(l->actions, m->actions, sizeof m->actions);
    memcpy(l->acts, m->acts, sizeof m->acts);
    memcpy(l->loads, m->loads, sizeof m->loads);
    memcpy(l->additions, m->additions, sizeof m->additions);
    memcpy(l->takes, m->takes, sizeof m->takes);
    memcpy(l->quiet + 1, m->quiet, sizeof m->quiet);
    l->actions[OF_EACH] = (boil_action){.kind = BOIL_ACTION_WATER, .is.water = {1, 1, 200}};
    l->actions[OF_EACH + 1] = plate_action(1, 100);
    l->actions[OF_EACH + 1].is.load.shape = BOIL_SHAPE_TUBE;
    l->loads[h.loads_count] = hand_made_grave_load(poured == BOIL_ACTION_SALTS ? UNKNOWN : 1100);
    l->additions[h.additions_count] = (boil_addition_result){.kind = poured,
                                                             .over_s = 1e4,
                                                             .quiet_poured_kg = 50,
                                                             .boil_lost_s = spell_s,
                                                             .recovery_s = 1e4,
                                                             .level_rise_m = 1,
                                                             .missed_by_m = 1};
    l->takes[h.takes_count] = (boil_take_result){.time_s = 1, .temperature_K = 400, .was_boiling = true, .missed_by_m = 1};
    l->quiet[0] = l->quiet[1 + h.quiet_count] = hand_made_grave_quiet();
    h.acts = l->acts;
    h.loads = l->loads;
    h.additions = l->additions;
    h.takes = l->takes;
    h.quiet = l->quiet + 1;
    return h;
}

static inline boil_schedule hand_made_schedule(const hand_made *m, hand_made_lists *l)
{
    boil_schedule s = m->schedule;
    s.actions = l->actions;
    s.breaks[s.breaks_count] = (boil_break){0, 1e9};
    return s;
}

/* Of that name; of severity BOIL_SEVERITIES: it is not found. The same whatever stands behind the lists. */
static inline boil_finding hand_made_find(const hand_made *m, const char *id)
{
    const boil_action_kind kinds[] = {BOIL_ACTION_WATER, BOIL_ACTION_SALTS, BOIL_ACTION_LIQUID};
    boil_finding first = {.severity = BOIL_SEVERITIES};
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        boil_findings f;
        hand_made_lists lists;
        boil_history h = hand_made_enclose(m, kinds[i], &lists);
        boil_schedule s = hand_made_schedule(m, &lists);
        assert_int_equal(boil_findings_of_unchecked(&m->plant, &s, &m->needed, &h, NULL, 0, &f, NULL), BOIL_OK);
        boil_finding found = hand_made_in(&f, id);
        first = i == 0 ? found : first;
        assert_int_equal(found.severity, first.severity);
        assert_true(found.value == first.value || (isnan(found.value) && isnan(first.value)));
        boil_findings_free(&f);
    }
    return first;
}

/* Likewise, only possible: of a run with such closures beside a likely one in which nothing is found. */
static inline boil_finding hand_made_possible(const hand_made *m, boil_closures closures, const char *id)
{
    hand_made calm;
    hand_made_lists lists;
    hand_made_begin(&calm);
    boil_history h = hand_made_enclose(m, BOIL_ACTION_WATER, &lists);
    boil_schedule s = hand_made_schedule(m, &lists);
    boil_run_of_set other = {.closures = closures, .let_go_s = UNKNOWN, .history = h};
    boil_findings f, possible;
    assert_int_equal(boil_findings_of_unchecked(&m->plant, &s, &m->needed, &calm.history, &other, 1, &f, &possible), BOIL_OK);
    boil_finding found = hand_made_in(&possible, id);
    boil_findings_free(&f);
    boil_findings_free(&possible);
    return found;
}

static inline void assert_grade_at(const hand_made *m, const char *id, boil_severity severity, const char *file, int line)
{
    boil_finding f = hand_made_find(m, id);
    if (f.severity != severity)
        print_error("%s:%d: %s is of grade %d, not %d\n", file, line, id, (int)f.severity, (int)severity);
    _assert_int_equal((uintmax_t)f.severity, (uintmax_t)severity, file, line);
}

#define assert_grade(m, id, severity) assert_grade_at((m), (id), (severity), __FILE__, __LINE__)
#define assert_no_find(m, id) assert_grade_at((m), (id), BOIL_SEVERITIES, __FILE__, __LINE__)

#endif
