/* commands/explore/statistics.h -- what the rows of a study say. Sums run over the rows in their order, so the same rows give
   the same numbers, whoever made them. */
#ifndef COMMANDS_EXPLORE_STATISTICS_H
#define COMMANDS_EXPLORE_STATISTICS_H

#include "commands/explore/answer.h"

/* The draws of one output in one cell, ascending. What did not happen (a boil that never came back) is later than all. */
typedef struct {
    double *sorted; /* to be freed with explore_spread_free */
    size_t count, never;
} explore_spread;

explore_spread explore_spread_of(const explore_answer *s, size_t cell, size_t output); /* nothing when memory is refused */
void explore_spread_free(explore_spread *p);
double explore_spread_at(const explore_spread *p, double share); /* NaN: never, or nothing there */

/* Odds, among the draws made, that an output is at least so much. What did not happen is not. */
boil_odds explore_odds(const explore_answer *s, size_t cell, size_t output, double least);

/* Odds, among the draws made, of a finding of WARNING or graver. */
boil_odds explore_grave_odds(const explore_answer *s, size_t cell);

/* A finding over all draws of a cell. */
typedef struct {
    const char *id, *title;
    boil_severity gravest;
    boil_odds odds;
} explore_finding;

#define EXPLORE_FINDINGS_MAX 64

/* Those found at least once, gravest first, then likeliest. Returns how many. */
size_t explore_findings_of(const explore_answer *s, size_t cell, explore_finding found[EXPLORE_FINDINGS_MAX]);

/* Of a study without a grid and with inputs. */
boil_sensitivity explore_sensitivity(const explore_answer *s, size_t output);

/* The outputs whose causes are told, each by a few words. */
typedef struct {
    explore_output output;
    const char *words;
} explore_target;
const explore_target *explore_target_listed(size_t index); /* NULL beyond the last */

#endif
