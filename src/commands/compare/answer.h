/* commands/compare/answer.h -- two runs held against each other: which settings, actions, outcomes and findings differ. Actions
   are matched by the time from the start, so that shifts that begin at different hours can be compared. */
#ifndef COMMANDS_COMPARE_ANSWER_H
#define COMMANDS_COMPARE_ANSWER_H

#include "base/units.h"
#include "cli/output.h"
#include "describe/carried_out.h"

typedef struct {
    const carried_out *a, *b;
} compare_answer;

/* Title and run sheet are no setting of the plant. */
bool compare_setting_differs(const compare_answer *c, size_t setting);

/* An action that only one of them has; the same at another time is two. */
typedef struct {
    const scenario *of;
    size_t action; /* in its schedule */
    bool in_a;
} compare_action;

/* In the order of time, to be freed; NULL when there are none, or memory is refused. */
compare_action *compare_actions(const compare_answer *c, size_t *count);

/* Quantities of an outcome, one by one; NULL beyond the last. */
typedef struct {
    const char *name; /* in JSON, with its SI unit */
    const char *words;
    unit_dimension dimension;
    size_t where;                       /* in carried_out, where that is all */
    double (*of)(const carried_out *o); /* else */
    bool is_steam_peak;                 /* it may be more than said */
    bool always;                        /* told in the report also where it is the same in both */
} compare_measure;
const compare_measure *compare_measured(size_t index);
double compare_measure_of(const compare_measure *m, const carried_out *o); /* NaN: there is none */

/* A finding of either, likely or possible; NULL where it was not found. */
typedef struct {
    const boil_finding *in[2]; /* of a, of b */
    bool likely[2];
} compare_finding;

const boil_finding *compare_finding_of(const compare_finding *f); /* that of a, else of b */

/* Gravest first; to be freed. */
compare_finding *compare_findings(const compare_answer *c, size_t *count);

void compare_report(const void *answer, const output *o, FILE *to);
void compare_csv(const void *of, FILE *to); /* what comes of it */
extern const document compare_documents[];
bool compare_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

#endif
