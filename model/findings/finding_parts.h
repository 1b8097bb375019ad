/* findings/finding_parts.h -- what the files of findings share. A new finding is its row in
   case/grading.c and in finding_table.c, its judge, and a test. */
#ifndef BOIL_FINDINGS_FINDING_PARTS_H
#define BOIL_FINDINGS_FINDING_PARTS_H

#include "boilback.h"
#include "case/grading.h"

typedef struct boil_judged boil_judged;

/* Looks for one finding in one run, and says so each time with boil_find: its row is the one being judged. */
typedef void boil_judge(boil_judged *j);

typedef struct {
    const char *id, *title;
    boil_unit_kind unit;
    boil_judge *judge;
    bool of_set; /* depends on the uncertain closures: looked for in every run of the set */
    const char *advice;
    const char *value_words;  /* NULL: the value is what the title says */
    const char *needed_words; /* NULL: it names no mass */
} boil_finding_row;

const boil_finding_row *boil_finding_row_at(size_t index); /* by boil_found_kind; NULL beyond the last */

/* The case being judged, and the list being filled. */
struct boil_judged {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    boil_remedies needed;
    boil_found_kind kind;
    boil_findings *list;
    boil_outcome outcome;
    bool reaches_end; /* the likely run does */
    bool refused;     /* the history is empty */
    bool let_go;      /* in it what floats is let go: it ends soon after, and that is no end to judge a layer by */
    bool only_may;    /* neither the likely run nor a mild one: what it shows, and what it could, is possible */
    bool more_than;   /* what is found next is that or more */
};

/* Of a grade. */
typedef enum { BOIL_UNBOUND, BOIL_AT_NOTICE, BOIL_AT_CAUTION, BOIL_AT_WARNING, BOIL_AT_DANGER } boil_finding_bound;

/* One time that a thing is found. What is 0 is not said. */
typedef struct {
    double x;               /* its measure: case/grading.h */
    double value, limit;    /* as they are said */
    double per_x;           /* by how much the value grows with x; 0: the break points have no values of their own */
    double time_s, worst_s; /* first so grave; worst_s 0: then */
    double outside_s;
    const double *from_s;           /* first past each break point; NULL: all then */
    boil_finding_bound least, most; /* what else was so makes it at least, at most */
    double needed_W, needed_kg;
    size_t spells;
    const char *advice; /* for what made it so; NULL: the row's */
} boil_sighting;

/* Graded by the row of the kind being judged; nothing is found when no break point is passed, and nothing makes it any. Finds of a kind
   that follow each other are one, of the worst. */
void boil_find(boil_judged *j, const boil_sighting *s);

/* What was followed through the run, its value being `at_zero` + `per_x` x. */
boil_sighting boil_sighting_watched(const boil_judged *j, boil_watch_kind k, double at_zero, double per_x);

/* What would leave so much freeboard, were it to come off: over the rim a DANGER, where its surge gets there, else at most a WARNING. */
boil_sighting boil_sighting_left(const boil_judged *j, double left_m, bool overflows, double time_s);

/* Of the freeboard limit, what `left_m` of it uses up; and the height that x counts in. */
double boil_finding_used_up(const boil_judged *j, double left_m);
double boil_finding_freeboard_unit(const boil_judged *j);

/* The quiet spell in which a run ends, unless the heat was turned down for it; NULL: it ends boiling, or early. */
const boil_quiet_result *boil_finding_quiet_end(const boil_history *h);

/* How long, s, an addition of liquid into the boil stopped it; 0 for any other. */
double boil_finding_stopped_for(const boil_history *h, const boil_addition_result *a);

/* The spell in which what floated would have left the least freeboard; NULL: nothing floated. And when what floats could first lift the
   bath over the rim; NaN never. */
const boil_quiet_result *boil_finding_least_left(const boil_history *h);
double boil_finding_may_overflow(const boil_history *h);

/* findings/causes.c: fills `because` in both lists; possible may be NULL. */
void boil_finding_causes(boil_findings *found, boil_findings *possible);

/* findings/advice.c: in both lists what one finding advises gives way to a graver one that forbids it; possible may be NULL. */
void boil_finding_advice(boil_findings *found, boil_findings *possible);

/* Of a bath that starts under water afloat, and so cold that it may be bailed off; NULL: of any other. */
const char *boil_finding_advice_afloat(const boil_judged *j);

extern boil_judge boil_judge_never_boils, boil_judge_never_returns, boil_judge_layer_outlasts, boil_judge_boil_lost,
    boil_judge_liquid_stops, boil_judge_load_heavy, boil_judge_load_quiet, boil_judge_load_through, boil_judge_load_cold,
    boil_judge_tubes, boil_judge_not_resolved, boil_judge_left_range, boil_judge_water_quiet, boil_judge_layer,
    boil_judge_surface_boils, boil_judge_water_quenches, boil_judge_water_fast, boil_judge_water_short, boil_judge_surge,
    boil_judge_overflow, boil_judge_overflow_still, boil_judge_freeboard, boil_judge_too_hot, boil_judge_too_cool,
    boil_judge_nearly_dry, boil_judge_heater_bare, boil_judge_floor_bare, boil_judge_floor_hot, boil_judge_parts_bare,
    boil_judge_superheat, boil_judge_tall, boil_judge_salt_quiet, boil_judge_salt_slug, boil_judge_dry_salt,
    boil_judge_salt_bed, boil_judge_salt_much, boil_judge_valve_hunts, boil_judge_valve_short, boil_judge_valve_quiet,
    boil_judge_crystals, boil_judge_crust, boil_judge_restart, boil_judge_thermostat, boil_judge_hollows, boil_judge_bail_hot,
    boil_judge_goal_missed, boil_judge_level_high, boil_judge_unattended, boil_judge_boil_short, boil_judge_place_taken,
    boil_judge_break_quiet, boil_judge_salt_unstated;

#endif
