/* findings/finding_parts.h -- what the files of findings share. A new finding is its row in finding_table.c, its judge, and a
   test. */
#ifndef BOIL_FINDINGS_FINDING_PARTS_H
#define BOIL_FINDINGS_FINDING_PARTS_H

#include "boilback.h"

typedef struct boil_judged boil_judged;

/* Looks for one finding in one run, and says so each time with boil_find: its row is the one being judged. */
typedef void boil_judge(boil_judged *j);

typedef struct {
    const char *id, *title;
    boil_unit_kind unit;
    boil_judge *judge;
    bool of_set; /* depends on the uncertain closures: looked for in every run of the set */
    const char *advice;
    const char *needed_words; /* NULL: it names no mass */
} boil_finding_row;

const boil_finding_row *boil_finding_row_at(size_t index); /* NULL beyond the last */

/* The case being judged, and the list being filled. */
struct boil_judged {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    boil_remedies needed;
    const boil_finding_row *row;
    boil_findings *list;
    boil_outcome outcome;
    bool reaches_end; /* the likely run does */
    bool refused;     /* the history is empty */
    bool let_go;      /* in it what floats is let go: it ends soon after, and that is no end to judge a layer by */
    bool more_than;   /* what is found next is that or more */
};

void boil_find(boil_judged *j, boil_severity severity, double time_s, double value, double limit);
void boil_find_needing(boil_judged *j, boil_severity severity, double time_s, double value, double limit, double needed_W,
                       double needed_kg);

/* The quiet spell in which a run ends, unless the heat was turned down for it; NULL: it ends boiling, or early. */
const boil_quiet_result *boil_finding_quiet_end(const boil_history *h);

/* How long, s, an addition of liquid into the boil stopped it; 0 for any other. */
double boil_finding_stopped_for(const boil_history *h, const boil_addition_result *a);

/* Steam over three times calm is a surge: well above what a load or a trickle of water does (1.2), well below what sends a
   usual bath over its rim. Judgement. */
#define SURGE_RATIO 3.0

extern boil_judge boil_judge_never_boils, boil_judge_never_returns, boil_judge_boil_lost, boil_judge_load_heavy,
    boil_judge_load_quiet, boil_judge_load_cold, boil_judge_tubes, boil_judge_water_quiet, boil_judge_layer,
    boil_judge_surface_boils, boil_judge_surge, boil_judge_overflow, boil_judge_overflow_still, boil_judge_freeboard,
    boil_judge_too_hot, boil_judge_too_cool, boil_judge_heater_bare, boil_judge_parts_bare, boil_judge_superheat,
    boil_judge_tall, boil_judge_salt_quiet, boil_judge_salt_slug, boil_judge_salt_bed, boil_judge_salt_much,
    boil_judge_liquid_stops, boil_judge_valve_hunts, boil_judge_valve_short, boil_judge_valve_quiet, boil_judge_crystals,
    boil_judge_restart, boil_judge_not_resolved, boil_judge_dry_salt;

#endif
