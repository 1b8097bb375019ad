/* lesson/debrief.h -- a shift looked back upon: what the bath did after each act, which acts were bad ones, and the same shift with
   those done with care.

   A bad act is one that a finding of CAUTION or more belongs to (findings/belongs.h), where care can make another of it: what, is
   common practice, no source, and by how much is judgement; the model then says whether that is enough. */
#ifndef LESSON_DEBRIEF_H
#define LESSON_DEBRIEF_H

#include "lesson/care.h"
#include "lesson/lesson.h"

#define DEBRIEF_ALONE_MOST 8

typedef struct {
    debrief_care *acts; /* of the schedule as done, in its order */
    size_t acts_count, bad;
    boil_schedule care;    /* the same shift with all bad acts done with care; empty where none was */
    size_t *origin;        /* which act each of its acts comes of; NULL likewise */
    boil_history history;  /* of that, likely run, no trace; empty likewise */
    double *alone_m;       /* by act: least room to the rim with that bad act alone done with care; NaN of others. NULL: one was
                                    bad, or none, or more than DEBRIEF_ALONE_MOST */
    boil_severity gravest; /* found in it, likely or possible */
    lesson_verdict yours, cared; /* without a lesson: nothing */
    bool holds;                  /* the likely run of it gives no WARNING, and passes where there is a lesson */
} debrief;

/* Of a shift that was carried out: a run of the schedule and what was found in it. `l` NULL: no lesson. BOIL_OK, or a failure as of
   boil_run, after which there is nothing to free. It makes some tens of runs at most. */
boil_outcome debrief_of(const lesson *l, const boil_plant *p, const boil_schedule *s, const boil_history *h,
                        const boil_findings *found, const boil_findings *possible, debrief *out);
void debrief_free(debrief *d);

/* The likely run of the same shift with one bad act alone done with care: what is left of the harm. As debrief_of. */
boil_outcome debrief_alone(const boil_plant *p, const boil_schedule *s, const debrief *d, size_t act, boil_history *out);

/* When what floats lets go in the runs of a set: earliest and latest end of a quiet spell under a layer that would leave less than
   the freeboard asked for. NaN: in none. */
typedef struct {
    double earliest_s, latest_s;
} debrief_range;
debrief_range debrief_lets_go(const boil_plant *p, const boil_run_set *set);

/* What is printed of it. */
typedef struct {
    const lesson *lesson; /* NULL: none */
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    const char *const *names; /* of the acts, in their order: "water 2 gal over 1 min" */
    double start_s;           /* wall clock */
    unit_system system;
    debrief_range lets_go;
} debrief_shift;

/* At most 79 columns: terms with values and limits, those that fail first; act by act what the bath did and what care makes of it; both
   shifts side by side; sentence, range of clock times, caution. */
void debrief_print(const debrief *d, const debrief_shift *of, FILE *to);

#endif
