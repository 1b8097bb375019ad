/* support/evidence.h -- a table of printed or measured values against what the model gives. Prints one line a row: id, value,
   ours, deviation, band, verdict. A row is inside its band, both ways; or its column `outside` says why it is known not to be,
   and then it must lie outside: the list is honest both ways. To move a number, change the model, look at the printed table and
   fill or empty `outside`.

   The table's columns: id, quantity, unit, value, kind, band, outside, status, source; see tests/published/whole_bath.csv. */
#ifndef SUPPORT_EVIDENCE_H
#define SUPPORT_EVIDENCE_H

#include <math.h>

#include "support/published.h"

/* What the model gives: the same twice, or its lower and upper estimate. */
typedef struct {
    double low, high;
} evidence;

static inline evidence evidence_of(double value)
{
    return (evidence){value, value};
}

/* How far the value is from ours, over the band: within -1 to 1 is inside. NaN: nothing to compare with. */
static inline double evidence_distance(const char *kind, double value, double band, evidence ours)
{
    if (strcmp(kind, "relative") == 0)
        return (ours.low - value) / (band * fabs(value));
    if (strcmp(kind, "absolute") == 0)
        return (ours.low - value) / band;
    if (strcmp(kind, "factor") == 0)
        return log(ours.low / value) / log(band);
    if (strcmp(kind, "encloses") == 0)
        return ours.low <= value && value <= ours.high ? 0 : copysign(2, ours.low - value);
    if (strcmp(kind, "none") != 0)
        fail_msg("no such kind of band: %s", kind);
    return (double)NAN;
}

static inline void evidence_print(published *t, evidence ours, const char *verdict)
{
    const double value = published_number(t, "value");
    char found[40], off[40] = "";
    snprintf(found, sizeof found, "%.4g", ours.low);
    if (ours.high != ours.low)
        snprintf(found, sizeof found, "%.3g to %.3g", ours.low, ours.high);
    else if (strcmp(published_text(t, "kind"), "absolute") == 0)
        snprintf(off, sizeof off, "%+.3g", ours.low - value);
    else if (!isnan(value))
        snprintf(off, sizeof off, "%+.1f %%", 100 * (ours.low / value - 1));
    print_message("%-5s %-58.58s %-10s %9.5g %16s %9s  %-8s %5s  %s\n", published_text(t, "id"), published_text(t, "quantity"),
                  published_text(t, "unit"), value, found, off, published_text(t, "kind"), published_text(t, "band"), verdict);
}

/* Whether the row is as the table says. */
static inline bool evidence_row(published *t, evidence ours)
{
    const double distance =
        evidence_distance(published_text(t, "kind"), published_number(t, "value"), published_number(t, "band"), ours);
    const bool finite = isfinite(ours.low) && isfinite(ours.high), compared = !isnan(distance);
    const bool inside = fabs(distance) <= 1, listed = published_text(t, "outside")[0] != '\0';
    char verdict[PUBLISHED_LINE];
    snprintf(verdict, sizeof verdict, "%s%s%s",
             !compared ? "not compared"
             : inside  ? "inside"
                       : "OUTSIDE",
             listed ? ", as listed: " : "", published_text(t, "outside"));
    if (!finite)
        snprintf(verdict, sizeof verdict, "NO ANSWER");
    else if (compared && inside == listed)
        snprintf(verdict, sizeof verdict,
                 inside ? "INSIDE, but listed as outside: take it off the list" : "OUTSIDE, not listed");
    evidence_print(t, ours, verdict);
    return finite && (!compared || inside != listed);
}

/* Every row of the table; `work` answers for one of them. */
static inline void evidence_table(const char *path, evidence (*work)(published *row))
{
    int rows = 0, wrong = 0, outside = 0;
    published *t = published_open(path);
    print_message("%-5s %-58s %-10s %9s %16s %9s  %-8s %5s  %s\n", "id", "quantity", "unit", "value", "ours", "off", "", "band",
                  "verdict");
    while (published_next(t)) {
        rows++;
        outside += published_text(t, "outside")[0] != '\0';
        wrong += !evidence_row(t, work(t));
    }
    published_close(t);
    print_message("%s: %d rows, %d listed as outside\n", path, rows, outside);
    assert_true(rows > 0);
    if (wrong > 0)
        fail_msg("%s: %d rows are not as listed", path, wrong);
}

#endif
