/* validate/text.c -- the table to read: what lies outside first, then all rows by group, the works, and what was left out; within 80
   columns where a row can. */
#include "validate/validate.h"

enum { WIDTH = 79, WHAT = 33 };

/* The first line and the further ones begin with so many blanks. */
static void put_wrapped(FILE *to, size_t first, size_t further, const char *text)
{
    size_t at = 0, indent = first;
    for (const char *word = text; *word;) {
        const size_t length = strcspn(word, " ");
        if (at > 0 && at + 1 + length > WIDTH) {
            fputc('\n', to);
            at = 0;
            indent = further;
        }
        at += (size_t)fprintf(to, "%*s%.*s", at == 0 ? (int)indent : 1, "", (int)length, word);
        word += length + strspn(word + length, " ");
    }
    fputc('\n', to);
}

static bool outside(const validate_row *r)
{
    return validate_compared(r) && !validate_inside(r);
}

static void put_deviation(const validate_row *r, char *text, size_t size)
{
    if (!validate_compared(r))
        snprintf(text, size, "-");
    else if (strcmp(r->kind, "relative") == 0)
        snprintf(text, size, fabs(r->deviation) < 1 ? "%+.2g %%" : "%+.0f %%", 100 * r->deviation);
    else if (strcmp(r->kind, "factor") == 0)
        snprintf(text, size, "x%.2f", r->deviation);
    else
        snprintf(text, size, "%+.2g", r->deviation);
}

static void put_band(const validate_row *r, char *text, size_t size)
{
    if (!validate_compared(r))
        snprintf(text, size, "-");
    else if (strcmp(r->kind, "relative") == 0)
        snprintf(text, size, "%.2g %%", 100 * r->band);
    else if (strcmp(r->kind, "factor") == 0)
        snprintf(text, size, "x%g", r->band);
    else if (strcmp(r->kind, "encloses") == 0)
        snprintf(text, size, "between");
    else
        snprintf(text, size, "%.2g", r->band);
}

static void put_ours(const validate_row *r, char *text, size_t size)
{
    if (r->ours.low == r->ours.high)
        snprintf(text, size, "%.5g", r->ours.low);
    else
        snprintf(text, size, "%.3g-%.3g", r->ours.low, r->ours.high);
}

static void put_row(const validate_row *r, FILE *to)
{
    char what[240], value[32], ours[32], deviation[16], band[16];
    snprintf(what, sizeof what, "%s%s%s", r->what, strcmp(r->unit, "1") == 0 ? "" : ", ",
             strcmp(r->unit, "1") == 0 ? "" : r->unit);
    snprintf(value, sizeof value, "%.6g", r->value);
    put_ours(r, ours, sizeof ours);
    put_deviation(r, deviation, sizeof deviation);
    put_band(r, band, sizeof band);
    const bool fits = strlen(what) <= WHAT;
    if (!fits)
        fprintf(to, "%-4s %c %s\n", r->id, r->status, what);
    fprintf(to, "%-4s %c %-*s %9s %9s %8s %6s%s\n", fits ? r->id : "", fits ? r->status : ' ', WHAT, fits ? what : "",
            isnan(r->value) ? "-" : value, ours, deviation, band, outside(r) ? " OUT" : "");
}

static void put_heading(FILE *to)
{
    fprintf(to, "%-4s   %-*s %9s %9s %8s %6s\n", "row", WHAT, "what", "printed", "ours", "off", "band");
}

static void put_source(const validate_row *before, const validate_row *r, FILE *to)
{
    if (before == NULL || strcmp(before->source, r->source) != 0)
        put_wrapped(to, 2, 4, r->source);
}

static void put_reason(const validate_row *r, FILE *to)
{
    char because[700];
    snprintf(because, sizeof because, "because%s: %s", r->pinned ? " (pinned)" : "",
             r->reason[0] ? r->reason : "NO REASON IS STATED");
    put_wrapped(to, 7, 9, because);
}

/* A reason stands once, under the last of the rows in a row that share it. */
static const validate_row *put_outside_of(const validate_answer *answer, const char *group, const validate_row *before,
                                          FILE *to)
{
    for (size_t i = 0; i < answer->count; i++) {
        const validate_row *r = &answer->rows[i];
        if (!outside(r) || strcmp(r->group, group) != 0)
            continue;
        if (before != NULL && strcmp(before->reason, r->reason) != 0)
            put_reason(before, to);
        put_source(before, r, to);
        put_row(r, to);
        before = r;
    }
    return before;
}

static void put_outside(const validate_answer *answer, FILE *to)
{
    const validate_row *last = NULL;
    fprintf(to, "\nOUTSIDE OF THE SOURCE'S UNCERTAINTY, AND WHY\n\n");
    put_heading(to);
    for (size_t i = 0; validate_group(i) != NULL; i++)
        last = put_outside_of(answer, validate_group(i), last, to);
    if (last != NULL)
        put_reason(last, to);
}

static void put_group(const validate_answer *answer, const char *group, FILE *to)
{
    const validate_row *before = NULL;
    size_t rows = 0, out = 0;
    for (size_t i = 0; i < answer->count; i++)
        if (strcmp(answer->rows[i].group, group) == 0) {
            rows++;
            out += outside(&answer->rows[i]);
        }
    if (rows == 0)
        return;
    fprintf(to, "\n%s: %zu rows, %zu outside\n\n", group, rows, out);
    put_heading(to);
    for (size_t i = 0; i < answer->count; i++) {
        const validate_row *r = &answer->rows[i];
        if (strcmp(r->group, group) != 0)
            continue;
        put_source(before, r, to);
        put_row(r, to);
        before = r;
    }
}

static void put_works(const validate_answer *answer, FILE *to)
{
    fprintf(to, "\nTHE WORKS, AND HOW MANY ROWS ARE OF EACH\n\n");
    for (size_t i = 0; i < answer->count; i++) {
        char line[240];
        if (!validate_first_of_work(answer, i))
            continue;
        snprintf(line, sizeof line, "%4zu %s", validate_rows_of_work(answer, answer->rows[i].work), answer->rows[i].work);
        put_wrapped(to, 0, 5, line);
    }
}

static void put_not_compared(FILE *to)
{
    published *table = published_open("tests/published/not_compared.csv");
    fprintf(to, "\nREAD, BUT NOT COMPARED, AND WHY\n\n");
    while (published_next(table)) {
        char line[900];
        snprintf(line, sizeof line, "- %s [%s]: %s", published_text(table, "what"), published_text(table, "source"),
                 published_text(table, "why"));
        put_wrapped(to, 0, 2, line);
    }
    published_close(table);
}

static void put_head(const validate_answer *answer, FILE *to)
{
    size_t compared = 0, out = 0, works = 0, by_status[128] = {0};
    for (size_t i = 0; i < answer->count; i++) {
        compared += validate_compared(&answer->rows[i]);
        out += outside(&answer->rows[i]);
        works += validate_first_of_work(answer, i);
        by_status[(unsigned char)answer->rows[i].status & 127]++;
    }
    fprintf(to, "%zu values of %zu works, %zu of them outside of their source's uncertainty.\n", compared, works, out);
    fprintf(to, "V: read in a source, %zu; L: evaluated from a printed formula, a closed form or\n", by_status['V']);
    fprintf(to, "a general library, %zu; M: from memory of the source, %zu; -: no source. An L\n", by_status['L'],
            by_status['M']);
    fprintf(to, "row checks arithmetic as much as physics. off: ours less printed; band: the\nsource's own.\n");
    fprintf(to, "A pinned row is also held where it lies today (tests/published/pins.csv).\n");
}

void validate_text(const validate_answer *answer, FILE *to)
{
    put_head(answer, to);
    validate_summary(answer, to);
    put_outside(answer, to);
    for (size_t i = 0; validate_group(i) != NULL; i++)
        put_group(answer, validate_group(i), to);
    put_works(answer, to);
    put_not_compared(to);
}
