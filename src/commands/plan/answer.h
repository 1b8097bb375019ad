/* commands/plan/answer.h -- a plan for the jobs of a scenario, and beside it what comes of their own order; where odds are asked for,
   one that holds in that share of the draws of [uncertain]. */
#ifndef COMMANDS_PLAN_ANSWER_H
#define COMMANDS_PLAN_ANSWER_H

#include "cli/output.h"
#include "commands/plan/rest.h"
#include "plan/conditions.h"
#include "plan/relax.h"
#include "planning/draws.h"
#include "planning/learn.h"
#include "scenario/scenario.h"

typedef TEXT_OF(240) plan_words;

/* In how many draws the plan that is told holds, each counted by draws that it was not made with. */
typedef struct {
    double asked;                    /* share of them; 0: nobody asked */
    boil_plan_odds counted, without; /* of the plan that is told, and of the one that was found before its odds were counted */
    double without_last_s;           /* last out of that */
    bool met, replanned;             /* told is another than that */
    size_t plans;                    /* that were counted */
    plan_words lacks;                /* why the next did not do; "": it did, or none was made */
} plan_odds;

typedef struct {
    const scenario *scenario;
    unit_system system;        /* of what is told */
    boil_plan_problem problem; /* of the scenario */
    boil_plan_job *jobs;
    boil_break breaks[BOIL_BREAKS_MAX];
    boil_planning planning;
    boil_plan_proof plan, listed; /* what was sought, and first come, first served */
    const boil_plan_proof *best;  /* the better of the two */
    unsigned long seed;
    size_t tried;                                         /* timetables */
    size_t proofs;                                        /* sets of runs */
    bool stopped;                                         /* somebody ended the search */
    boil_plan_condition failed[BOIL_PLAN_CONDITIONS_MAX]; /* why there can be none, */
    size_t failed_count;
    boil_plan_relaxation gives[BOIL_PLAN_RELAXATIONS_MAX]; /* and what would have to give; both where none was found */
    size_t gives_count;
    plan_odds odds;
    const plan_rest *rest; /* planned is the rest of a shift; NULL: all of it */
    boil_plan_resumed
        hanging[BOIL_POSITIONS_MAX]; /* then: what hangs, place by place, as [now] lists it; problem.hanging_count of it */
    boil_plan_hanging_dip lifts[BOIL_POSITIONS_MAX];
} plan_answer;

/* How it is sought. */
typedef struct {
    unsigned long seed, threads; /* threads 0: as many as there are processors; they change nothing but the time */
    bool progress;
    double odds; /* share of draws; 0: not asked */
} plan_work;

/* The problem of a scenario, `rest` where it is that of the rest of a shift, else NULL, and what is known of its bath; to be freed either way. False: with *result BOIL_OK where no plan can be
   asked for, and all complaints were made; else with what failed, and nothing said. */
bool plan_begin(plan_answer *a, const scenario *s, const plan_rest *rest, unit_system told, boil_outcome *result);
void plan_free(plan_answer *a);

/* Complaints about jobs that the bath bears in no way; false when there are any. */
bool plan_jobs_fit(const plan_answer *a);

/* The first part that the bath bears in no way, NULL: none; and what it bears of such a one in a dip, kg of steel. */
const boil_plan_part *plan_part_unfit(const plan_answer *a);
double plan_part_bears_kg(const plan_answer *a, const boil_plan_part *p);

/* Seeks and proves it. BOIL_OK, or a failure. */
boil_outcome plan_seek(plan_answer *a, const plan_work *w);

/* Then counts in how many draws it holds, and where those are fewer than asked for makes others that leave more time. BOIL_OK, or a
   failure; false, with a complaint, where nothing is uncertain. */
bool plan_odds_possible(const plan_answer *a);
boil_outcome plan_seek_odds(plan_answer *a, scenario_text *text, const plan_work *w);

/* What is said of now, of bath and valve and of odds, paragraph by paragraph: "" beyond the last. */
plan_words plan_told(const plan_answer *a, size_t index);
plan_words plan_now_told(const plan_answer *a, size_t index);
plan_words plan_bath_told(const plan_answer *a, size_t index);
bool plan_valve_unlocked(const plan_answer *a); /* a valve that may be open while the bath does not boil */
plan_words plan_odds_told(const plan_answer *a, size_t index);
bool plan_works(const plan_answer *a); /* a plan that holds, with the odds that were asked for */

/* Why there is none, and what would have to give. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome plan_explain(plan_answer *a);

/* What hangs in a part or a dip: "frames 1/2 + clips". */
typedef TEXT_OF(160) plan_names;
plan_names plan_part_name(const plan_answer *a, size_t part);
plan_names plan_dip_names(const plan_answer *a, const boil_plan_timetable *t, size_t dip);

plan_names plan_hanging_name(const plan_answer *a, size_t dip); /* of what hung there already */

bool plan_hanging_overdone(const plan_answer *a, size_t dip); /* it has had its most by its lift */
double plan_hanging_late_s(const plan_answer *a,
                           size_t dip); /* its lift, behind the due time of what hangs in it; 0: in time */

/* Why it goes in then, a few words: when something of it is due, else what it waited for. */
plan_names plan_dip_reason(const plan_answer *a, const boil_plan_timetable *t, size_t dip);

/* One line of the run sheet. */
typedef enum {
    PLAN_IN,
    PLAN_OUT,
    PLAN_LIFT,
    PLAN_WATER,
    PLAN_SALTS,
    PLAN_BREAK
} plan_line_kind; /* PLAN_LIFT: of what hung there already */
typedef struct {
    plan_line_kind kind;
    double time_s, until_s;
    size_t which; /* dip, place, pour, sifting or break */
} plan_line;

/* All of a timetable by time, to be freed; NULL when memory is refused. */
plan_line *plan_lines(const plan_answer *a, const boil_plan_timetable *t, size_t *count);

double plan_slowest_s(const boil_plan_proof *p); /* of all boils, by the gravest run; infinity: one is not back */

/* What a proof says is broken, one by one, as many as are kept: a sentence without full stop. */
size_t plan_broken_told(const boil_plan_proof *p);
plan_words plan_broken(const plan_answer *a, const boil_plan_proof *p, size_t index);

size_t plan_failed_count(const plan_answer *a);
plan_words plan_failed(const plan_answer *a, size_t index); /* of a->planning.idle and a->failed, likewise */
plan_words plan_gives(const plan_answer *a, size_t index);  /* of a->gives: what gives, a few words */
void plan_none_report(const plan_answer *a, FILE *to);      /* both; nothing where a plan holds */

formatted_text plan_clock_at(const plan_answer *a, double s); /* on the wall, to the nearest second */

/* What decides, in a line; and what holds all through the sheet. */
plan_words plan_verdict(const plan_answer *a);
plan_words plan_rule(const plan_answer *a);

/* A line of the run sheet in words, each "" where there is nothing to say. */
typedef struct {
    const char *act;
    plan_words what;
    formatted_text back, out; /* the boil by the gravest run; the dip, or the tap shut, or the break over */
    plan_names why;
} plan_sheet_words;
plan_sheet_words plan_sheet_line(const plan_answer *a, const boil_plan_proof *p, const plan_line *l);

void plan_report(const void *answer, const output *o, FILE *to);
void plan_csv(const void *of, FILE *to); /* the run sheet */
void plan_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to);
extern const document plan_documents[];

/* The scenario that carries the plan out, from the text that was read. False, with a complaint, when it cannot be written. */
bool plan_write(const plan_answer *a, const scenario_text *read, const char *path);

#endif
