#include "jobs/text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/words.h"
#include "habits/habits.h"

const char *const job_priorities[] = {[BOIL_PLAN_NORMAL] = "normal", [BOIL_PLAN_MUST] = "must", [BOIL_PLAN_LOW] = "low", NULL};
const bounds job_stay_bounds = {"min", 1, 2880}; /* two days */

job_text job_text_begin(const char *typed)
{
    return (job_text){.typed = typed};
}

static void add(job_text *t, const char *bytes, size_t length, const char *at, bool follows)
{
    if (t->length + length > JOB_TEXT_MAX) {
        t->full = true;
        return;
    }
    memcpy(t->text + t->length, bytes, length);
    for (size_t i = 0; i < length; i++)
        t->from[t->length + i] = (size_t)(at - t->typed) + (follows ? i : 0);
    t->length += length;
    t->text[t->length] = '\0';
    t->from[t->length] = (size_t)(at - t->typed) + (follows ? length : 0);
}

void job_text_add(job_text *t, const char *at, const char *end)
{
    add(t, at, (size_t)(end - at), at, true);
}

void job_text_say(job_text *t, const char *words, const char *at)
{
    add(t, words, strlen(words), at, false);
}

bool job_text_cursor(job_text *t, const cursor *line, cursor *c)
{
    message_reading kept = {t->text, t->length, t->typed, t->from};
    *c = *line;
    if (t->full)
        return cursor_error(line, line->at, "this line is too long for a job");
    const char *text = messages_keep_reading(line->messages, &kept);
    c->at = text;
    c->end = text != NULL ? text + t->length : NULL;
    return text != NULL;
}

bool job_moment_read(const job_reader *r, cursor *c, const char *what, quantity *q)
{
    cursor_done(c);
    if (q->text != NULL)
        return cursor_error(c, c->at, "'%s' is said twice", what);
    q->text = c->at;
    return r->reader->moment(r->reader->moments, c, what, &q->si) && cursor_expect_end(c);
}

/* A time that counts in the tank, and what the shift leaves for it. */
static bool check_times(const job_reader *r, const cursor *place, const job_said *said, boil_plan_job *j, const char *name)
{
    double open_s = r->end_s - j->earliest_s;
    if (said->most.text != NULL && !(j->most_s >= j->least_s))
        return cursor_error(place, said->most.text, "'%s' may stay no longer than %s, but needs %s", name,
                            format_duration(j->most_s).text, format_duration(j->least_s).text);
    if (j->least_s > open_s)
        return cursor_error(place, said->least.text, "'%s' needs %s, which is %s more than the shift has from its earliest",
                            name, format_duration(j->least_s).text, format_duration(j->least_s - open_s).text);
    if (j->earliest_s + j->least_s > j->due_s)
        return cursor_error(place, said->due.text, "'%s' is due at %s: from %s on %s do not fit", name,
                            format_clock(r->start_s, j->due_s).text, format_clock(r->start_s, j->earliest_s).text,
                            format_duration(j->least_s).text);
    if (j->priority == BOIL_PLAN_MUST && !isfinite(j->due_s))
        return cursor_error(place, said->name_at, "'%s' must be out, but when? say when it is due", name);
    if (j->may_split && j->load.pieces > 0 && j->load.pieces < 2)
        return cursor_error(place, said->name_at, "'%s' is 1 piece, which cannot be split", name);
    if (j->may_split && (j->load.area_m2 > 0 || j->load.trapped_kg > 0))
        return cursor_error(place, said->name_at,
                            "'%s' may split, so leave out 'area' and the hollows' water: nobody knows what of it "
                            "is in which basket",
                            name);
    return true;
}

static bool is_new(const job_reader *r, const cursor *place, const job_said *said)
{
    size_t i = scenario_jobs_find(r->into, said->name_at, said->name_length);
    return i == r->into->count || cursor_error(place, said->name_at, "name '%s' a second time (line %zu)",
                                               words_quoted(said->name_at, said->name_length).text, r->into->list[i].line);
}

static boil_plan_job job_of(const job_said *said, const boil_load *load)
{
    boil_plan_job j = {.load = *load, .least_s = said->least.si, .due_s = HUGE_VAL};
    j.most_s = said->most.text != NULL ? said->most.si : j.least_s + BOIL_PLAN_MOST_MORE_S;
    j.earliest_s = said->from.text != NULL ? said->from.si : 0;
    if (said->due.text != NULL)
        j.due_s = said->due.si;
    j.priority = said->priority;
    j.may_split = said->may_split;
    j.may_share = said->may_share;
    return j;
}

/* Behind the mass; how many pieces hang in a basket is for the plan to say. */
static char *steel_words(const cursor *load)
{
    TEXT_OF(JOB_TEXT_MAX + 40) t = {""};
    cursor c = *load, part;
    for (bool first = true; cursor_part(&c, &part); first = false) {
        int length = (int)(part.end - part.at);
        bool pieces = length > 6 && words_same(part.end - 6, 6, "pieces");
        if (first && length > 4 && words_same(part.end - 4, 4, "iron"))
            TEXT_ADD(t.text, " iron");
        else if (!first && !pieces)
            TEXT_ADD(t.text, ", %.*s", length, part.at);
    }
    return text_copy(t.text, strlen(t.text));
}

static void keep(const job_reader *r, const cursor *place, const job_said *said, const boil_plan_job *job, const cursor *load)
{
    scenario_jobs *into = r->into;
    scenario_job *list = boil_array_reserve(into->list, &into->capacity, into->count, sizeof *list);
    scenario_job one = {*job, text_copy(said->name_at, said->name_length), steel_words(load), place->line};
    if (list != NULL)
        into->list = list;
    if (list == NULL || one.name == NULL || one.steel == NULL) {
        free(one.name);
        free(one.steel);
        messages_lost(place->messages);
        return;
    }
    list[into->count++] = one;
}

/* What a load may say and a plan decides. */
static bool is_free(const cursor *place, const boil_action *a, const job_said *said)
{
    if (a->position > 0)
        return cursor_error(place, said->name_at, "the plan finds the position: leave it out");
    return a->name == 0 || cursor_error(place, said->name_at, "a job is named by what its line begins with: leave 'as' out");
}

void job_finish(const job_reader *r, const cursor *place, job_text *load, const job_said *said)
{
    boil_action a = {.kind = BOIL_ACTION_LOAD};
    cursor c;
    if (!job_text_cursor(load, place, &c))
        return;
    habits_of_doing(&c);
    action_line line = {.place = c, .portions = 1};
    const cursor words = c;
    bool good = action_read(r->reader, &c, &a, &line) && is_free(place, &a, said);
    good = is_new(r, place, said) && good && !said->wrong;
    if (r->into->count == BOIL_PLAN_JOBS_MAX && good)
        good = cursor_error(place, said->name_at, "there are more than %zu jobs", BOIL_PLAN_JOBS_MAX);
    if (!good || said->least.text == NULL)
        return;
    boil_plan_job job = job_of(said, &a.is.load);
    if (check_times(r, place, said, &job, words_quoted(said->name_at, said->name_length).text))
        keep(r, place, said, &job, &words);
}
