/* lesson/care.h -- what care is taken of each act of a shift, and the schedule that comes of it. */
#ifndef LESSON_CARE_H
#define LESSON_CARE_H

#include "boilback.h"

/* What care makes of an act; of several that which comes first here. */
typedef enum {
    DEBRIEF_SAME,
    DEBRIEF_DRAINED,      /* parts whose hollows hold water: emptied before */
    DEBRIEF_SPLIT,        /* a load: equal parts, each a minute after the boil is back from the one before */
    DEBRIEF_WHEN_BOILING, /* once it has boiled for a minute; water at half a gallon a minute at most */
    DEBRIEF_SIFTED,       /* salts: the same, 2.5 lb a minute for each 250 gal of bath: judgement */
    DEBRIEF_LESS_WATER,   /* as much as had gone off as vapour since the addition before */
    DEBRIEF_SLOWER,       /* an addition: over four times as long, doubled until it is enough, five times at most */
    DEBRIEF_GENTLE,       /* heat over crystals: the mixer on, a quarter of it until they are gone, then as before */
    DEBRIEF_LESS_HEAT     /* the dial lower, in steps of 5 %, until it is enough */
} debrief_change;

/* How an act is done with care. All zero: as it was done. */
typedef struct {
    bool drained, waits, sifted, gentle;
    unsigned parts;      /* of a load; 0: whole */
    unsigned less;       /* of water: 1 and more */
    unsigned slower;     /* 1: four times as long, 2: eight times, ... */
    unsigned steps;      /* of the dial */
    double less_kg;      /* water: what had gone off */
    double gone_s;       /* gentle: when the crystals were gone; infinity: not yet known */
    const char *because; /* id of the finding that care was first taken for; NULL: it was a good act */
} debrief_care;

debrief_change debrief_change_of(const debrief_care *c);

#define CARE_GENTLE_DIAL 0.25 /* heat over crystals */
#define CARE_STEADY_S 60.0    /* of boil, before anything goes in: common practice, no source */

/* A run in which findings were made, and what it is of. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    const size_t *origin; /* the act as done that each act comes of; NULL: they are those */
    size_t acts_count;    /* of those as done */
} care_case;

/* Takes more care of each act that a finding belongs to: a likely one of CAUTION or more, or over a limit at all; a possible one of
   WARNING or more. Either list may be NULL. True when any changed. */
bool care_take(const care_case *c, const boil_findings *likely, const boil_findings *possible, debrief_care *care,
               boil_outcome *outcome);

bool care_mends(size_t kind); /* whether care of an act can mend a finding of that kind */

/* What had gone off as vapour before each act that is to give less water, since the addition before it: from rows. */
void care_measure_water(const boil_schedule *s, const boil_history *h, debrief_care *care);

/* When the crystals were gone in a run with rows; infinity: not before its end. */
double care_crystals_gone(const boil_history *h);

/* The schedule with that care. `origin` becomes a list, to be freed, of the act that each of its acts comes of. BOIL_NO_MEMORY: nothing
   is left to free. */
boil_outcome care_schedule(const boil_plant *p, const boil_schedule *s, const debrief_care *care, boil_schedule *out,
                           size_t **origin);

#endif
