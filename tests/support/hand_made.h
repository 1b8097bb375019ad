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

static inline boil_finding hand_made_in(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return f->list[i];
    return (boil_finding){.severity = BOIL_SEVERITIES};
}

/* Of that name; of severity BOIL_SEVERITIES: it is not found. */
static inline boil_finding hand_made_find(const hand_made *m, const char *id)
{
    boil_findings f;
    assert_int_equal(boil_findings_of_unchecked(&m->plant, &m->schedule, &m->needed, &m->history, NULL, 0, &f, NULL), BOIL_OK);
    boil_finding found = hand_made_in(&f, id);
    boil_findings_free(&f);
    return found;
}

/* Likewise, only possible: of a run with such closures beside a likely one in which nothing is found. */
static inline boil_finding hand_made_possible(const hand_made *m, boil_closures closures, const char *id)
{
    hand_made calm;
    hand_made_begin(&calm);
    boil_run_of_set other = {.closures = closures, .let_go_s = UNKNOWN, .history = m->history};
    boil_findings f, possible;
    assert_int_equal(boil_findings_of_unchecked(&m->plant, &m->schedule, &m->needed, &calm.history, &other, 1, &f, &possible),
                     BOIL_OK);
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
