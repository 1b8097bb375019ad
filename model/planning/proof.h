/* planning/proof.h -- a timetable carried out by the whole set of runs that judges a case (model/findings/run_set.h): what it breaks, and
   what that teaches about single dips and about the bath. Then the same order is decoded again. */
#ifndef BOIL_PLANNING_PROOF_H
#define BOIL_PLANNING_PROOF_H

#include "planning/carry.h"
#include "planning/planning.h"

typedef enum {
    BOIL_PLAN_BREAKS_PLACING,  /* a dip finds no time */
    BOIL_PLAN_BREAKS_HEAT,     /* or takes too much heat */
    BOIL_PLAN_BREAKS_MASS,     /* or is too heavy */
    BOIL_PLAN_BREAKS_WATER,    /* or is in as the bath runs short of water */
    BOIL_PLAN_BREAKS_DUE,      /* a part that must be out by then is not: when it is, and should be */
    BOIL_PLAN_BREAKS_END,      /* the shift is over before the last is out: likewise */
    BOIL_PLAN_BREAKS_RECOVERY, /* a dip's boil is away longer than the limit in some run */
    BOIL_PLAN_BREAKS_LATE,     /* a dip went in later than planned in some run, for the boil was not back */
    BOIL_PLAN_BREAKS_SHORT,    /* a part was not hot for as long as it must be */
    BOIL_PLAN_BREAKS_LONG,     /* or longer than it may */
    BOIL_PLAN_BREAKS_BAND,     /* the bath leaves its band, by the likely run, so far, K */
    BOIL_PLAN_BREAKS_FINDING,  /* something above NOTICE is found, or possible, in the set */
    BOIL_PLAN_BREAKS
} boil_plan_breaks;

typedef struct {
    boil_plan_breaks what;
    size_t dip, part;       /* of what concerns one */
    double value, limit;    /* s, K or kg */
    const char *id, *title; /* of a finding; static text */
    boil_severity severity;
} boil_plan_break;

/* What the runs made of a dip. */
typedef struct {
    double likely_s, gravest_s;       /* its boil's absence: by the likely run, by the gravest of all; infinity: never back */
    double late_s;                    /* that it went in later than planned, in any */
    double stay_least_s, stay_most_s; /* that it had to stay, and could, by the likely run; infinity: it was never hot */
} boil_plan_seen;

enum { BOIL_PLAN_BREAKS_KEPT = 40 };

typedef struct {
    boil_plan_timetable table; /* its own */
    boil_plan_carried carried;
    boil_plan_seen *seen; /* of each dip */
    boil_plan_break broken[BOIL_PLAN_BREAKS_KEPT];
    size_t broken_count;                 /* more may be than are kept */
    double freeboard_m;                  /* the least of all runs */
    double boils_end_K, over_K, under_K; /* of the likely run: its boil at the end, and how far it left the band; 0: not */
    double drag_out_kg, drag_out_salts_kg,
        drag_out_m;                /* likewise: bath liquid that left with parts, the salts in it, and by how
                                                          much its volume lowers the level */
    double boils_off_kg_s, fuel_J; /* likewise, while it boils, water on the parts taken off */
} boil_plan_proof;

/* BOIL_OK, whatever it breaks; to be freed then. */
boil_outcome boil_plan_prove(const boil_planning *g, const boil_plan_timetable *t, boil_plan_proof *out);
void boil_plan_proof_free(boil_plan_proof *p); /* one that holds nothing is fine */
bool boil_plan_proof_holds(const boil_plan_proof *p);

/* What a load had of its minutes: since it was hot until its lift; 0: it never was. NaN: it was not lifted. And whether it is neither
   less nor more than its job allows. */
double boil_plan_hot_for_s(const boil_load_result *r);
bool boil_plan_minutes_hold(const boil_plan_job *j, double had_s);

/* Better than another: it breaks less, or as much and its timetable is better. */
bool boil_plan_proof_better(const boil_plan_proof *x, const boil_plan_proof *y);

#endif
