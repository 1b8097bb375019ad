/* plan/plan.h -- a list of jobs, and a timetable for them: which hang together in a dip, when each dip goes in and comes out, and
   when water is poured and salts are put back. SI; times from the start of the shift, s.

   A job is steel that needs some time at the bath's temperature. One that may be split is hung in several baskets; a basket of one
   job is a part. Parts that may share go in together: a dip. Dips enter one after the other, since the boil is one and the hoist is
   one. What a timetable must hold:
       H1 every boil is back within the limit, and has settled before the next dip goes in
       H2 no part goes in before its job's earliest, none hangs shorter or longer than its job allows once it is hot through
       H3 no more dips hang than there are positions; one is free again when the basket has been carried off
       H4 the hoist makes one move at a time, none in a break: in, from the move before entry to CLEAR_S after it; out, from the
          beginning of the lift for one move; and nobody leaves for a break before the boil is back
       H5 the boiling point stays within its band
       H6 water is poured and salts are sifted in only while the bath boils, not in a break, and so long before a load that they
          have mixed in
       H7 no dip, baskets too, is heavier than the usual load of the bath
       H8 what must be out by its due time is, and all is out by the end of the shift
   Beyond that, in this order and never one against another: last dip out; lateness of the others, weighed; pours; fuel; time that
   parts stay beyond the least they need.

   Finding the best is bin packing where one break is long [Garey and Johnson, Computers and Intractability (1979), SR1; from memory]:
   what is found is good, and nothing here says that it is the best. */
#ifndef BOIL_PLAN_PLAN_H
#define BOIL_PLAN_PLAN_H

#include "boilback.h"

#define BOIL_PLAN_JOBS_MAX ((size_t)500)
#define BOIL_PLAN_PARTS_MAX ((size_t)1000)
#define BOIL_PLAN_CLEAR_S 10.0      /* from entry until the hoist has let go: as long as the usual lowering */
#define BOIL_PLAN_MOST_MORE_S 900.0 /* a job that says no most may stay so much longer than its least; judgement */
#define BOIL_PLAN_LIMIT_SHARE                                                                                                  \
    0.97 /* of the limit of recovery that a dip is planned to until it was carried out once; judgement */
#define BOIL_PLAN_WEIGHT_NORMAL 3.0 /* of a second's lateness; judgement */
#define BOIL_PLAN_WEIGHT_LOW 1.0

typedef enum { BOIL_PLAN_NORMAL, BOIL_PLAN_MUST, BOIL_PLAN_LOW } boil_plan_priority;

typedef struct {
    boil_load load;         /* all its pieces; the basket is that of each part; how long it is immersed does not matter */
    double least_s, most_s; /* that it hangs once it is hot through: 0 < least <= most */
    double earliest_s;      /* 0 or more */
    double due_s;           /* its lift begins; infinity: none; less than 0: it should have been before the start */
    boil_plan_priority priority;
    bool may_split; /* between its pieces; where they were not counted, anywhere */
    bool may_share;
} boil_plan_job;

/* What hangs there at the start, in a shift that is planned on while it is under way. */
typedef struct {
    double leaves_s; /* its lift begins; 0 or more */
    size_t number;   /* in which they are lifted, from 1 */
} boil_plan_hanging_dip;

typedef struct {
    const boil_plan_job *jobs;
    size_t jobs_count;        /* 1 to BOIL_PLAN_JOBS_MAX */
    size_t positions;         /* 1 to BOIL_POSITIONS_MAX */
    double hoist_s;           /* one move, in or out; above 0 */
    double settle_s;          /* from the boil's return to the next entry; 0 or more. Never less than the bath's steady_s */
    double end_s;             /* of the shift; infinity: open */
    double water_kg_s;        /* the most that is poured by hand; 0: none is */
    const boil_break *breaks; /* in the order of time, none over another */
    size_t breaks_count;
    const boil_plan_hanging_dip *hanging; /* no two lifts at a time */
    size_t hanging_count;                 /* 0 to positions */
} boil_plan_problem;

/* What hangs in one basket. */
typedef struct {
    size_t job;        /* of the problem */
    size_t number, of; /* which part of how many, from 0 */
    boil_load load;
    double heat_J;  /* that it takes up to the bath's temperature, basket and all */
    double lag_s;   /* time constant of that */
    double hot_s;   /* from entry until it is hot through, in by itself */
    double drag_kg; /* salts that it carries out as it is lifted */
} boil_plan_part;

/* What the search knows of the bath (model/planning/probe.h): two numbers for the boil's return,
       r = offset + (Q + Q_left)/quiet,   Q_left = sum Q_j exp(-(t - t_j)/lag_j) of what hangs there already                     (1)
   two for its water, and what its salts take. */
typedef struct {
    double limit_s; /* longest that a boil may be away */
    double quiet_W; /* heat that a quiet bath gains; above 0 */
    double offset_s;
    double weakens_W_kg; /* of it for each kg of water missing, as steam heats a hotter bath worse; 0: not worth heeding */
    double slower;   /* by this share of it the boil is back later than (1) says; 0: not. For baths that are not known well */
    double longer_s; /* and each dip hangs so much longer than its parts need here; 0: not */
    double density_kg_m3;  /* of it, boiling: for what leaves with parts; above 0 where it is proved */
    double most_kg;        /* heaviest dip, baskets too */
    double ready_s;        /* the bath boils from then on */
    double steady_s;       /* of boil before anybody pours */
    double guard_s;        /* from the end of a pour to the next load: until it has mixed in */
    double flow_kg_s;      /* of a pour; 0: none is made */
    double boils_off_kg_s; /* while it boils */
    double dries_kg_s;     /* while it is quiet */
    double strongest_kg;   /* water that may be missing, by the band's upper end */
    double weakest_kg;     /* water that may be too much, by its lower end; infinity: no such end */
    double missing_kg;     /* at the start; less than 0: too much is there */
    double outside_K;      /* likewise, that it boils above its band; less than 0: below; 0: neither */
    double owed_kg;        /* salts that parts carried out before the start; 0 or more */
    double salt_fraction;  /* by mass */
    double owes_kg;        /* salts that parts may carry out before they are put back: a quarter inch of level */
    double sift_kg_s;      /* of salts; 0: none are put back */
    bool valve;            /* water comes by itself */
    double fire_W;         /* fuel at full dial */
    double efficiency;     /* above 0 */
    double calm_W;         /* fuel that holds the calm boil, where a control sets the fire; 0: the dial stays where it is */
} boil_plan_bath;

/* What holds a dip's entry to its time. */
typedef enum {
    BOIL_PLAN_FIRST,
    BOIL_PLAN_BOIL, /* the boil of the dip before had to come back and settle */
    BOIL_PLAN_HOIST,
    BOIL_PLAN_BREAK,
    BOIL_PLAN_PLACE,    /* all positions were taken */
    BOIL_PLAN_EARLIEST, /* of one of its jobs */
    BOIL_PLAN_WARM,     /* what hung there still took too much heat */
    BOIL_PLAN_STAY,     /* nobody could lift it in time: the hoist was busy, or a break */
    BOIL_PLAN_WATER,    /* the bath had to be watered first */
    BOIL_PLAN_REASONS
} boil_plan_reason;

/* Of water, or of salts. */
typedef struct {
    double start_s, over_s, mass_kg;
} boil_plan_pour;

typedef struct {
    size_t first, count; /* of the timetable's parts */
    double enters_s, leaves_s;
    double recovery_s, back_s; /* of the boil: how long it is away, and when it is back */
    double stay_least_s, stay_most_s;
    double mass_kg, heat_J, lag_s; /* baskets too */
    double missing_kg;             /* water, as its boil is back, had all been poured that could be */
    double drag_kg;                /* salts that it carries out */
    boil_plan_pour salts;          /* sifted in before it goes in; mass 0: none */
    boil_plan_reason reason;
    bool unplaced;   /* no time was found */
    bool too_cold;   /* it takes too much heat for H1 */
    bool too_strong; /* the bath leaves its band for want of water */
} boil_plan_dip;

/* What is aimed at, the first first. Hard limits come before all else. */
typedef enum {
    BOIL_PLAN_UNPLACED,   /* dips without a time */
    BOIL_PLAN_BREACHES,   /* dips too cold, or in a bath too strong */
    BOIL_PLAN_OVERDUE_S,  /* musts over their due time and all over the end of the shift, summed */
    BOIL_PLAN_LAST_OUT_S, /* to the second, as all times here */
    BOIL_PLAN_LATENESS_S, /* of the others, weighed */
    BOIL_PLAN_POURS,      /* and siftings, more where salts are left to be put back afterwards */
    BOIL_PLAN_FUEL_KJ,
    BOIL_PLAN_OVERSTAY_S, /* beyond the least stay, of all dips */
    BOIL_PLAN_AIMS
} boil_plan_aim;

typedef struct {
    double of[BOIL_PLAN_AIMS];
} boil_plan_value;

typedef struct {
    boil_plan_dip *dips; /* in the order in which they enter */
    size_t dips_count;
    size_t *parts; /* of the case's parts, dip by dip */
    boil_plan_pour *pours;
    size_t pours_count;
    boil_plan_pour *salts; /* all that are sifted in */
    size_t salts_count;
    double left_kg; /* water still missing once nobody pours any more */
    double owed_kg; /* likewise: salts that were carried out and not put back; 0: so few that nobody would */
    boil_plan_value value;
} boil_plan_timetable;

/* NULL, or what is wrong with the problem as a whole: static text. */
const char *boil_plan_problem_wrong(const boil_plan_problem *p);

/* Whether x is better than y, and whether it breaks no hard limit. */
bool boil_plan_better(const boil_plan_value *x, const boil_plan_value *y);
bool boil_plan_holds(const boil_plan_value *v);

#endif
