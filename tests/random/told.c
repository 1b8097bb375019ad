#include "random/told.h"

#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>

#include "base/html.h"
#include "base/program.h"
#include "describe/carried_out.h"
#include "random/draft.h"

typedef struct {
    char *text, *json, *csv, *page;
} answers;

/* A file with each run of blanks as one. */
static char *slurped(const char *path, bool one_blank)
{
    FILE *from = fopen(path, "r");
    char *all = NULL;
    size_t size = 0;
    FILE *to = from != NULL ? open_memstream(&all, &size) : NULL;
    for (int c, last = 0; to != NULL && (c = fgetc(from)) != EOF; last = c) {
        c = one_blank && isspace(c) ? ' ' : c;
        if (!one_blank || c != ' ' || last != ' ')
            fputc(c, to);
    }
    if (to != NULL)
        fclose(to);
    if (from != NULL)
        fclose(from);
    return all;
}

/* A run that stopped early is told, and the program says so by its status. */
static bool asked(const char *program, const char *path, const char *what, const char *ending, bool stopped)
{
    char command[1500];
    snprintf(command, sizeof command, "%s run %s %s >%s.%s 2>/dev/null", program, path, what, path, ending);
    int status = system(command); /* NOLINT: the paths are the test's own */
    return WIFEXITED(status) && WEXITSTATUS(status) == (stopped ? STATUS_STOPPED : STATUS_DONE);
}

static char *part(const char *path, const char *ending, bool one_blank)
{
    char name[1000];
    snprintf(name, sizeof name, "%s.%s", path, ending);
    char *all = slurped(name, one_blank);
    remove(name);
    return all;
}

static bool answered(const char *program, const char *path, bool stopped, answers *a)
{
    char json[700], text[700];
    snprintf(json, sizeof json, "--json --csv %s.csv", path);
    snprintf(text, sizeof text, "--full --units si --html %s.html", path);
    bool good = asked(program, path, json, "json", stopped);
    good = asked(program, path, text, "text", stopped) && good;
    *a = (answers){part(path, "text", true), part(path, "json", true), part(path, "csv", false), part(path, "html", true)};
    return good && a->text != NULL && a->json != NULL && a->csv != NULL && a->page != NULL;
}

__attribute__((format(printf, 2, 3))) static bool holds(const char *text, const char *format, ...)
{
    char wanted[400];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(wanted, sizeof wanted, format, arguments);
    va_end(arguments);
    return strstr(text, wanted) != NULL;
}

static size_t times(const char *text, const char *what)
{
    size_t count = 0;
    for (const char *c = text; (c = strstr(c, what)) != NULL; c++)
        count++;
    return count;
}

/* As a page has it: an apostrophe is escaped there. */
static draft_text escaped(const char *title)
{
    draft_text t = {""};
    FILE *to = fmemopen(t.text, sizeof t.text, "w");
    if (to != NULL) {
        html h = html_to(to);
        html_text(&h, title);
        fclose(to);
    }
    return t;
}

static void findings_told(const boil_findings *f, const answers *a, told_text *t)
{
    for (size_t i = 0; i < f->count; i++) {
        const boil_finding *one = &f->list[i];
        const char *word = boil_severity_word(one->severity);
        if (!holds(a->json, "\"id\": \"%s\", \"severity\": \"%s\"", one->id, word))
            TEXT_ADD(t->text, "JSON lacks %s %s; ", word, one->id);
        if (!holds(a->text, " %s %s", word, one->title) && !holds(a->text, " %s (possible) %s", word, one->title))
            TEXT_ADD(t->text, "text lacks %s %s; ", word, one->id);
        draft_text title = escaped(one->title);
        if (!holds(a->page, ">%s</strong></th><td><strong>%s</strong>", word, title.text) &&
            !holds(a->page, ">%s</strong><small> possible</small></th><td><strong>%s</strong>", word, title.text))
            TEXT_ADD(t->text, "page lacks %s %s; ", word, one->id);
    }
}

/* A number of the JSON by its key; NaN: null, or not there. */
static double json_number(const char *json, const char *name)
{
    const char *at = json != NULL ? strstr(json, name) : NULL;
    return at == NULL || strncmp(at + strlen(name), "null", 4) == 0 ? (double)NAN : strtod(at + strlen(name), NULL);
}

/* Of the last row of the CSV, and the most of all rows. */
typedef struct {
    double last, most;
} column;

static column column_of(const char *csv, const char *name)
{
    const char *at = strstr(csv, name);
    size_t before = 0;
    column c = {(double)NAN, -(double)INFINITY};
    at += at != NULL && *at == ',';
    for (const char *k = csv; at != NULL && k < at; k++)
        before += *k == ',';
    for (const char *row = strchr(csv, '\n'); row != NULL && row[1] != '\0'; row = strchr(row + 1, '\n')) {
        const char *cell = row + 1;
        for (size_t k = 0; k < before && cell != NULL; k++)
            cell = strchr(cell, ',') != NULL ? strchr(cell, ',') + 1 : NULL;
        c.last = cell == NULL || *cell == ',' ? (double)NAN : strtod(cell, NULL);
        c.most = fmax(c.most, c.last);
    }
    return c;
}

/* Both are written with nine digits. */
static bool same_number(double a, double b)
{
    return fabs(a - b) <= 2e-8 * fmax(1, fabs(b));
}

static void numbers_told(const boil_history *h, const answers *a, told_text *t)
{
    const boil_summary *s = &h->summary;
    const char *summary = strstr(a->json, "\"summary\": {");
    double end_K = json_number(summary, "\"temperature_end_K\": "), most_m = json_number(summary, "\"level_max_m\": ");
    column bath = column_of(a->csv, ",temperature_K,"), level = column_of(a->csv, ",level_m,"),
           time = column_of(a->csv, "time_s");
    char shown[100];
    if (!same_number(end_K, s->temperature_end_K) || !same_number(most_m, s->level_max_m.value))
        TEXT_ADD(t->text, "JSON ends at %.9g K, most %.9g m; the run at %.9g K, %.9g m; ", end_K, most_m, s->temperature_end_K,
                 s->level_max_m.value);
    if (h->end == BOIL_RUN_DONE && (!same_number(time.last, h->end_s) || !same_number(bath.last, end_K)))
        TEXT_ADD(t->text, "CSV ends at %.9g s, %.9g K; ", time.last, bath.last);
    if (level.most > most_m * (1 + TOLD_CREST))
        TEXT_ADD(t->text, "CSV has a level of %.9g m, JSON %.9g m at most; ", level.most, most_m);
    snprintf(shown, sizeof shown, "-> %s", format_number(UNITS_SI, DIM_LENGTH, s->still_level_end_m).text);
    if (strstr(a->text, shown) == NULL)
        TEXT_ADD(t->text, "text does not say '%s'; ", shown);
}

told_text told_alike(const char *program, const char *path, const scenario *s)
{
    boil_run_options o = boil_run_options_default();
    carried_out c;
    answers a = {NULL, NULL, NULL, NULL};
    told_text t = {""};
    o.row_interval_s = 10;
    if (carried_out_of(s, &o, &c) != BOIL_OK) {
        TEXT_ADD(t.text, "the set cannot be carried out");
        return t;
    }
    if (!answered(program, path, carried_out_stopped(&c), &a))
        TEXT_ADD(t.text, "the program ends with an error");
    else {
        findings_told(&c.found, &a, &t);
        findings_told(&c.possible, &a, &t);
        if (times(a.json, "\"certainty\": ") != c.found.count + c.possible.count)
            TEXT_ADD(t.text, "JSON has %zu findings, not %zu; ", times(a.json, "\"certainty\": "),
                     c.found.count + c.possible.count);
        numbers_told(&c.central, &a, &t);
    }
    free(a.text);
    free(a.json);
    free(a.csv);
    free(a.page);
    carried_out_free(&c);
    return t;
}
