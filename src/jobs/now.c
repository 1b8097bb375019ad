#include "jobs/now.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/words.h"

typedef enum {
    LINE_CLOCK,
    LINE_READS,
    LINE_BOILS,
    LINE_LEVEL,
    LINE_BOILED,
    LINE_ONCE,
    LINE_HANGS = LINE_ONCE,
    LINE_OUT,
    LINE_WITHDRAWN,
    LINE_URGENT,
    LINES
} line_kind;

/* clang-format off */
static const struct {
    const char *words, *form, *meaning;
} lines_known[] = {
    [LINE_CLOCK] = {"clock", "clock = WHEN", "what the clock shows; needed"},
    [LINE_READS] = {"reads", "reads = TEMPERATURE", "a thermometer in the bath; needed"},
    [LINE_BOILS] = {"boils", "boils = yes|no", "whether it boils all over; needed. Where it does not it is heated up first, and there is "
                    "neither water nor a load before it boils"},
    [LINE_LEVEL] = {"level", "level = LENGTH", "its still surface above the floor, with what hangs there; needed"},
    [LINE_BOILED] = {"last boiled", "last boiled = TEMPERATURE", "where it boiled last, if it does not now; default as the scenario begins"},
    [LINE_HANGS] = {"in the tank", "in the tank = JOB [+ JOB]... since WHEN [, out by WHEN]", "what hangs in one place: a line a place. "
                    "It is lifted then, or as soon as it has its minutes"},
    [LINE_OUT] = {"out", "out = JOB, ...", "what is done"},
    [LINE_WITHDRAWN] = {"withdrawn", "withdrawn = JOB, ...", "what need not be done"},
    [LINE_URGENT] = {"urgent", "urgent = JOB by WHEN, ...", "what must be out by then, whatever the list says; it comes in before its earliest only "
                     "where it must"},
};
/* clang-format on */

now_line now_line_listed(size_t index)
{
    return index < LINES ? (now_line){lines_known[index].form, lines_known[index].meaning} : (now_line){NULL, NULL};
}

void now_free(now_section *n)
{
    free(n->list);
    *n = (now_section){.line = 0};
}

/* A section under way. */
typedef struct {
    const job_reader *r;
    now_section *out;
    bool found[LINES]; /* of each: it stands there, read well or not */
} reading;

static bool moment(const reading *n, cursor *c, const char *what, double *s)
{
    cursor_done(c);
    return n->r->reader->moment(n->r->reader->moments, c, what, s) && cursor_expect_end(c);
}

/* One that is behind the clock, or before it. */
static bool moment_beside(const reading *n, cursor *c, const char *what, bool behind, double *s)
{
    cursor_done(c);
    const char *at = c->at;
    if (!moment(n, c, what, s))
        return false;
    if (isnan(n->out->clock_s) || (behind ? *s > n->out->clock_s : *s <= n->out->clock_s))
        return true;
    return cursor_error(c, at, "'%s' %s %s, and the clock shows %s", what, behind ? "must lie behind now: it says" : "says",
                        format_clock(n->r->start_s, *s).text, format_clock(n->r->start_s, n->out->clock_s).text);
}

/* The first place of a word that stands by itself; NULL: none. */
static const char *word_at(const cursor *c, const char *word)
{
    for (const char *at = words_skip(c->at, c->end); at < c->end;) {
        if (words_taken(at, c->end, word) > 0)
            return at;
        while (at < c->end && words_blank(at, c->end) == 0)
            at++;
        at = words_skip(at, c->end);
    }
    return NULL;
}

/* "2/3" at the end of a name, which is shortened by it. False, with a message, where it is no such part. */
static bool read_share(const cursor *c, const char **end, now_job *j)
{
    const char *at = *end;
    while (at > c->at && strchr("0123456789/", at[-1]) != NULL)
        at--;
    const char *slash = memchr(at, '/', (size_t)(*end - at));
    j->number = 0;
    j->of = 1;
    if (slash == NULL || at == c->at)
        return true;
    char *number_end, *of_end;
    unsigned long number = strtoul(at, &number_end, 10), of = strtoul(slash + 1, &of_end, 10);
    if (number_end != slash || of_end != *end || number < 1 || of < number || of > BOIL_PLAN_PARTS_MAX)
        return cursor_error(c, at, "write which basket of how many, such as 1/2");
    j->number = number - 1;
    j->of = of;
    *end = words_trim(c->at, at);
    return true;
}

static bool find_job(const reading *n, const cursor *c, const char *end, now_job *j)
{
    const scenario_jobs *all = n->r->into;
    size_t length = (size_t)(end - c->at);
    j->job = scenario_jobs_find(all, c->at, length);
    if (j->job < all->count || all->partial)
        return j->job < all->count;
    words_nearest near = words_near(c->at, length);
    for (size_t i = 0; i < all->count; i++)
        words_consider(&near, all->list[i].name);
    return cursor_error(c, c->at, "'%s' is no job of the list%s", words_quoted(c->at, length).text,
                        words_suggestion(&near).text);
}

static bool could_be_in_parts(const reading *n, const cursor *c, const now_job *j)
{
    const boil_plan_job *job = &n->r->into->list[j->job].job;
    if (j->of == 1 || (job->may_split && (!(job->load.pieces > 0) || job->load.pieces >= (double)j->of)))
        return true;
    return cursor_error(c, c->at, "'%s' cannot hang in %zu baskets: it may not split, or has fewer pieces",
                        n->r->into->list[j->job].name, j->of);
}

/* Nothing of a job is in two places, nor in two numbers of baskets; what is urgent only stays to be done. */
static bool agrees(const reading *n, const cursor *c, const now_job *j)
{
    for (size_t i = 0; i < n->out->count; i++) {
        const now_job *o = &n->out->list[i];
        bool urgent = (o->kind == NOW_URGENT) != (j->kind == NOW_URGENT);
        if (o->job != j->job || (urgent && (o->of > 1 || j->of > 1)))
            continue;
        if (o->of != j->of)
            return cursor_error(c, c->at, "'%s' hangs in %s here and in %zu above", n->r->into->list[j->job].name,
                                format_count(j->of, "basket", "baskets").text, o->of);
        if (o->number == j->number)
            return cursor_error(c, c->at, "'%s' stands in [now] a second time",
                                words_quoted(c->at, (size_t)(c->end - c->at)).text);
    }
    return true;
}

static bool is_name(const reading *n, const cursor *c)
{
    return scenario_jobs_find(n->r->into, c->at, (size_t)(c->end - c->at)) < n->r->into->count;
}

/* A name, perhaps with which basket of it; what else is known of it is in *j. */
static void read_job(const reading *n, cursor c, now_job j)
{
    c.at = words_skip(c.at, c.end);
    c.end = words_trim(c.at, c.end);
    const char *end = c.end;
    j.of = 1;
    if ((!is_name(n, &c) && !read_share(&c, &end, &j)) || !find_job(n, &c, end, &j) || !could_be_in_parts(n, &c, &j) ||
        !agrees(n, &c, &j))
        return;
    if (j.kind == NOW_URGENT && j.of > 1) {
        cursor_error(&c, c.at, "what is left of '%s' is urgent as a whole: leave the basket out", n->r->into->list[j.job].name);
        return;
    }
    now_job *list = boil_array_reserve(n->out->list, &n->out->capacity, n->out->count, sizeof *list);
    if (list == NULL) {
        messages_lost(c.messages);
        return;
    }
    n->out->list = list;
    list[n->out->count++] = j;
}

/* "out by 6:48" */
static bool read_out(const reading *n, cursor *line, double *out_s)
{
    cursor part;
    *out_s = (double)NAN;
    if (!cursor_part(line, &part))
        return true;
    if (!cursor_take(&part, "out by"))
        return cursor_error(&part, part.at, "expected 'out by' and a moment, got '%s'",
                            words_quoted(part.at, (size_t)(part.end - part.at)).text);
    return moment_beside(n, &part, "out by", true, out_s) && cursor_expect_end(line);
}

/* "clips + washers since 6:31, out by 6:48": one place. */
static void read_hanging(reading *n, cursor *line)
{
    cursor part, names;
    now_job j = {.kind = NOW_HANGS, .dip = n->out->dips};
    const cursor place = *line;
    const char *since = cursor_part(line, &part) ? word_at(&part, "since") : NULL;
    if (since == NULL) {
        cursor_error(&place, place.at, "say since when it hangs, such as 'frames 2/2 since 6:31'");
        return;
    }
    names = part;
    names.end = since;
    part.at = since;
    cursor_take(&part, "since");
    bool good = moment_beside(n, &part, "since", false, &j.since_s);
    good = read_out(n, line, &j.out_s) && good;
    n->out->dips++;
    if (n->out->dips > n->r->reader->positions && n->r->reader->positions > 0)
        good = cursor_error(&place, place.at, "more hangs here than the tank has positions, %zu", n->r->reader->positions);
    while (good && names.at < names.end) {
        const char *plus = memchr(names.at, '+', (size_t)(names.end - names.at));
        cursor one = names;
        one.end = plus != NULL ? plus : names.end;
        read_job(n, one, j);
        names.at = plus != NULL ? plus + 1 : names.end;
    }
}

/* "keys, pulleys"; "hooks by 7:30": what is urgent says by when. */
static void read_list(const reading *n, now_kind kind, cursor *line)
{
    cursor part;
    while (cursor_part(line, &part)) {
        now_job j = {.kind = kind, .out_s = (double)NAN};
        const char *by = kind == NOW_URGENT ? word_at(&part, "by") : NULL;
        if (kind == NOW_URGENT && by == NULL) {
            cursor_error(&part, part.at, "say by when it must be out, such as 'hooks by 7:30'");
            continue;
        }
        cursor name = part;
        if (by != NULL) {
            name.end = by;
            part.at = by;
            cursor_take(&part, "by");
            if (!moment_beside(n, &part, "by", true, &j.due_s))
                continue;
        }
        read_job(n, name, j);
    }
}

static void read_number(cursor *c, const char *what, unit_dimension d, const bounds *within, double *into)
{
    quantity q;
    if (quantity_read(c, what, UNIT_OF(d), &q) && quantity_within(c, what, &q, within) && cursor_expect_end(c))
        *into = q.si;
}

static void read_level(const reading *n, cursor *c)
{
    static const bounds level = {"m", 0.02, 5};
    const char *at = c->at;
    double depth_m = n->r->reader->plant->tank.depth_m; /* 0: it could not be read */
    read_number(c, "level", DIM_LENGTH, &level, &n->out->level_m);
    if (depth_m > 0 && n->out->level_m >= depth_m)
        cursor_error(c, at, "the level must lie below the rim: see 'depth' of [tank]");
}

static void read_clock(const reading *n, cursor *c)
{
    const char *at = c->at;
    double s;
    if (!moment(n, c, "clock", &s))
        return;
    if (s >= n->r->end_s)
        cursor_error(c, at, "the shift is over by then: it ends at %s", format_clock(n->r->start_s, n->r->end_s).text);
    else
        n->out->clock_s = s;
}

static void read_boils(const reading *n, cursor *c)
{
    bool yes = cursor_take(c, "yes");
    if (!yes && !cursor_take(c, "no")) {
        cursor_error(c, c->at, "say whether it boils all over: yes or no");
        return;
    }
    n->out->boils = yes;
    cursor_expect_end(c);
}

static void read_value(reading *n, line_kind kind, cursor *c)
{
    static const bounds temperature = {"degC", 0, 250};
    switch (kind) {
    case LINE_CLOCK:
        read_clock(n, c);
        break;
    case LINE_READS:
        n->out->reads_line = c->line;
        n->out->reads_column = (size_t)(c->at - c->source->lines[c->line - 1].text) + 1;
        read_number(c, "reads", DIM_TEMPERATURE, &temperature, &n->out->reads_K);
        break;
    case LINE_BOILED:
        read_number(c, "last boiled", DIM_TEMPERATURE, &temperature, &n->out->boiled_K);
        break;
    case LINE_BOILS:
        read_boils(n, c);
        break;
    case LINE_LEVEL:
        read_level(n, c);
        break;
    case LINE_HANGS:
        read_hanging(n, c);
        break;
    default:
        read_list(n, (now_kind)(kind - LINE_HANGS), c);
        break;
    }
}

/* Which it is, the cursor behind its sign; LINES, with a message, where it is none. */
static line_kind line_of(cursor *c)
{
    const char *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (equals == NULL) {
        cursor_error(c, c->at, "expected 'key = value', got '%s'", words_quoted(c->at, (size_t)(c->end - c->at)).text);
        return LINES;
    }
    size_t length = (size_t)(words_trim(c->at, equals) - c->at);
    words_nearest near = words_near(c->at, length);
    for (int k = 0; k < LINES; k++) {
        if (words_same(c->at, length, lines_known[k].words)) {
            c->at = words_skip(equals + 1, c->end);
            return (line_kind)k;
        }
        words_consider(&near, lines_known[k].words);
    }
    cursor_error(c, c->at, "unknown key '%s' in [now]%s", words_quoted(c->at, length).text, words_suggestion(&near).text);
    return LINES;
}

/* The clock first: other moments are held against it. */
static void read_lines(reading *n, const cursor lines[], size_t count, bool clock)
{
    for (size_t i = 0; i < count; i++) {
        cursor c = lines[i];
        const char *start = c.at;
        bool is_clock = c.end - c.at >= 5 && words_taken(c.at, c.end, "clock") > 0;
        if (is_clock != clock)
            continue;
        line_kind kind = line_of(&c);
        if (kind == LINES)
            continue;
        if (kind < LINE_ONCE && n->found[kind])
            cursor_error(&c, start, "'%s' is said a second time", lines_known[kind].words);
        else if (cursor_done(&c))
            cursor_error(&c, c.at, "'%s' says nothing", lines_known[kind].words);
        else
            read_value(n, kind, &c);
        n->found[kind] = true;
    }
}

void now_read(const job_reader *r, const cursor *header, const cursor lines[], size_t count, now_section *out)
{
    const double none = (double)NAN;
    reading n = {.r = r, .out = out};
    *out = (now_section){.line = header->line, .clock_s = none, .reads_K = none, .level_m = none, .boiled_K = none};
    read_lines(&n, lines, count, true);
    read_lines(&n, lines, count, false);
    for (int k = 0; k < LINE_BOILED; k++)
        if (!n.found[k])
            cursor_error(header, header->at, "[now] needs '%s'", lines_known[k].form);
    if (out->boils && n.found[LINE_BOILED])
        cursor_error(header, header->at, "'last boiled' is for a bath that does not boil: leave it out");
}
