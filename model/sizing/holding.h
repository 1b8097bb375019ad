/* sizing/holding.h -- does this plant hold with these loads? All answers about sizes ask this, with another heat, other loads
   or another time between them, so that none can say what another one denies.

   The bath is held as a shop holds it: where the plant has no automatic water, the schedule's own pours are left out, and an
   on/off valve of three times what the full heat would boil off lets in water as warm as the room while it boils, at the
   boiling point that the bath was charged to. It begins at its boil with nothing afloat, no crust and no salt on its floor; how
   long that takes from the cold is another question. Everything else of the schedule is done. It holds where
     - every load has the boil back within the limit (and, of loads spaced evenly, none goes into a quiet bath),
     - the swelled surface leaves the freeboard asked for,
     - the boiling bath stays in its band; one that was charged at an end of it or beyond, near where it began.
   By which laws is the question's: no one set of laws errs on the safe side in all of it (case/closures.h). */
#ifndef BOIL_SIZING_HOLDING_H
#define BOIL_SIZING_HOLDING_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "simulate/run.h"

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule; /* as boil_holding_schedule leaves it */
    boil_run_options run;          /* tolerance only */
    double limit_s;                /* the longest a boil may be away; above 0 */
    bool spaced;                   /* no load may go into a quiet bath */
    boil_simulation **own;         /* the workspace of whoever asks */
} boil_holding_case;

enum {
    BOIL_BREAKS_RECOVERY = 1,  /* a boil was back too late */
    BOIL_BREAKS_WEAK = 2,      /* it boiled below its band */
    BOIL_BREAKS_STRONG = 4,    /* above it */
    BOIL_BREAKS_FREEBOARD = 8, /* less than was asked for */
    BOIL_BREAKS_KNOWN = 16     /* the run left what is known of the bath */
};

/* Too little heat, or too much steel for it. */
#define BOIL_BREAKS_SLOW (BOIL_BREAKS_RECOVERY | BOIL_BREAKS_WEAK)

typedef struct {
    unsigned breaks;  /* 0: it holds */
    double slowest_s; /* NaN: one was not back, or there is none */
    double freeboard_min_m;
    double end_K, end_level_m; /* boiling point and still level at the end */
} boil_holding;

/* A copy without the pours of water that the valve takes over. To be freed, also after BOIL_NO_MEMORY. */
boil_outcome boil_holding_schedule(const boil_plant *p, const boil_schedule *s, boil_schedule *out);

/* How long, s, a load is watched from when it goes in: until it is out again, half an hour of a longer stay, and its boil was
   due. */
double boil_holding_watched(const boil_load *l, double limit_s);

/* A copy that ends where the heaviest load was watched: a fraction of the work, and nearly the same answer. */
boil_outcome boil_holding_brief(const boil_schedule *held, double limit_s, boil_schedule *out);

/* The plant with so much heat to the tank at full dial (0: its own), and its valve. */
boil_outcome boil_holding_plant(const boil_plant *p, double heat_W, boil_plant *out);

/* The run itself; what it says; and both. */
boil_outcome boil_holding_run(const boil_holding_case *c, double heat_W, boil_closures laws, boil_history *out);
boil_holding boil_holding_told(const boil_holding_case *c, const boil_history *h);
boil_outcome boil_holding_by(const boil_holding_case *c, double heat_W, boil_closures laws, boil_holding *out);

/* Which laws are asked, the grave ones first. */
enum { BOIL_HOLDING_LAWS = 3 };
extern const boil_closures boil_holding_laws[BOIL_HOLDING_LAWS];

/* By the grave laws, the sudden and the likely ones: all that any breaks, the worst of each number, the end by the grave
   ones. */
boil_outcome boil_holding_by_all(const boil_holding_case *c, double heat_W, boil_holding *out);

/* The same where *out is already what the grave run says. */
boil_outcome boil_holding_by_others(const boil_holding_case *c, double heat_W, boil_holding *out);

/* What it breaks: all of it where it breaks nothing that is heeded; else what it had broken when the first of that was, since no run
   goes on then. */
boil_outcome boil_holding_breaks(const boil_holding_case *c, double heat_W, boil_closures laws, unsigned heeded,
                                 unsigned *breaks);

/* Whether it breaks anything heeded by any of the first so many laws: that of number *first is asked first, and *first becomes the one
   that breaks it, after which no other is asked. */
boil_outcome boil_holding_breaks_by_any(const boil_holding_case *c, double heat_W, size_t laws, unsigned heeded, size_t *first,
                                        bool *breaks);

#endif
