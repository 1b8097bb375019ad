#include "replay/page/answer.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "case/closures.h"
#include "replay/abreast.h"

static const char *const names[LESSON_SHOWN] = {"A", "B"};

static boil_outcome add(lesson_answer *a, const scenario *s, const scenario_script *with, const char *name, const char *title)
{
    lesson_run *r = &a->runs[a->count + a->choices];
    *r = (lesson_run){.name = name, .title = title, .as = *s};
    r->as.start_s = a->start_s;
    if (with != NULL) {
        r->as.schedule = with->schedule;
        r->as.wording = with->wording;
    }
    boil_run_options o = replay_options(&r->as.schedule);
    boil_outcome outcome = carried_out_of(&r->as, &o, &r->done);
    if (outcome == BOIL_OK && a->of != NULL)
        r->verdict = lesson_judge(a->of, &r->as.plant, &r->done.central);
    return outcome;
}

static boil_outcome scripts_of(const scenario *s, lesson_answer *a)
{
    static const lesson_script scripts[LESSON_SHOWN] = {LESSON_RECKLESS, LESSON_CAREFUL};
    static const char *const titles[LESSON_SHOWN] = {"Recklessly", "With care"};
    boil_outcome outcome = BOIL_OK;
    while (a->count < LESSON_SHOWN && outcome == BOIL_OK) {
        outcome = add(a, s, &s->scripts[scripts[a->count]], names[a->count], titles[a->count]);
        a->count += outcome == BOIL_OK;
    }
    for (size_t i = 0; i < a->of->choices_count && outcome == BOIL_OK; i++) {
        outcome = add(a, s, &s->choices[i], names[0], a->of->choices[i].says);
        a->choices += outcome == BOIL_OK;
    }
    return outcome;
}

boil_outcome lesson_answer_of(const scenario *s, size_t count, lesson_answer *out, const scenario **failed)
{
    boil_outcome outcome = BOIL_OK;
    *out = (lesson_answer){.scenario = s, .start_s = s->start_s, .of = count == 1 && s->lesson.scripted ? &s->lesson : NULL};
    *failed = s;
    if (count > 1 && s[1].start_s != s[0].start_s) {
        out->start_s = 0;
        TEXT_ADD(out->apart.text, "A starts at %s, B at %s: times are counted from the start of each.",
                 format_clock_exact(s[0].start_s, 0).text, format_clock_exact(s[1].start_s, 0).text);
    }
    if (out->of != NULL)
        return scripts_of(s, out);
    while (out->count < count && outcome == BOIL_OK) {
        *failed = &s[out->count];
        outcome = add(out, *failed, NULL, names[out->count], (*failed)->title);
        out->count += outcome == BOIL_OK;
    }
    return outcome;
}

boil_outcome lesson_answer_of_shift(const scenario *done, const scenario *cared, lesson_answer *out)
{
    const bool asks = done->lesson.given;
    *out = (lesson_answer){.scenario = done, .start_s = done->start_s, .of = asks ? &done->lesson : NULL};
    boil_outcome outcome = add(out, done, NULL, names[0], asks ? "As done" : done->title);
    out->count += outcome == BOIL_OK;
    if (outcome != BOIL_OK || cared == NULL)
        return outcome;
    outcome = add(out, cared, NULL, names[1], asks ? "With care" : "The same shift, with care");
    out->count += outcome == BOIL_OK;
    return outcome;
}

void lesson_answer_free(lesson_answer *a)
{
    for (size_t i = 0; i < a->count + a->choices; i++) {
        replay_free(&a->runs[i].replay);
        carried_out_free(&a->runs[i].done);
    }
    a->count = a->choices = 0;
}

bool lesson_replays(lesson_answer *a, unit_system s, double slack)
{
    bool good = true;
    for (size_t i = 0; i < a->count + a->choices && good; i++) {
        replay_free(&a->runs[i].replay);
        good = replay_of(&a->runs[i].done, s, slack, &a->runs[i].replay);
    }
    return good;
}

bool lesson_stopped(const lesson_answer *a)
{
    bool stopped = false;
    for (size_t i = 0; i < a->count; i++)
        stopped = stopped || carried_out_stopped(&a->runs[i].done);
    return stopped;
}

double lesson_end(const lesson_answer *a)
{
    double end_s = 0;
    for (size_t i = 0; i < a->count + a->choices; i++)
        end_s = fmax(end_s, a->runs[i].done.central.end_s);
    return end_s;
}

/* Whether a graver run of the set comes over the rim. */
static bool may_come_over(const carried_out *o)
{
    for (size_t i = 0; i < o->set.count; i++)
        if (!boil_closures_is_mild(o->set.other[i].closures) && o->set.other[i].history.summary.overflow_s >= 0)
            return true;
    return false;
}

lesson_words lesson_outcome(const lesson_answer *a, const lesson_run *r)
{
    lesson_words w = {""};
    if (a->of == NULL)
        return w;
    if (r->verdict.passed && may_come_over(&r->done))
        TEXT_ADD(w.text,
                 "Passed, but in one of the runs it is judged by it comes over the rim: take it as not passed in a real shop.");
    else if (r->verdict.passed)
        TEXT_ADD(w.text, "Passed; no run it is judged by comes over the rim.");
    else
        TEXT_ADD(w.text, "Not passed");
    for (size_t i = 0, told = 0; i < a->of->terms_count && !r->verdict.passed; i++)
        if (!r->verdict.holds[i])
            TEXT_ADD(w.text, "%s %s %s, %s", told++ > 0 ? ";" : ":", a->of->terms[i].measure->title,
                     lesson_value_text(&a->of->terms[i], r->verdict.value[i], r->replay.system).text,
                     lesson_limit_text(&a->of->terms[i]).text);
    if (r->verdict.waited > 0)
        TEXT_ADD(w.text, "; what was waited for did not come");
    if (!r->verdict.passed)
        TEXT_ADD(w.text, ".");
    return w;
}

/* Of a boil that came back. */
static size_t decisive_spell(const boil_history *h)
{
    size_t best = h->quiet_count;
    for (size_t i = 0; i < h->quiet_count; i++)
        if (!isnan(h->quiet[i].end_s) &&
            (best == h->quiet_count || h->quiet[i].layer_at_return_kg > h->quiet[best].layer_at_return_kg))
            best = i;
    return best;
}

double lesson_later(const lesson_answer *a, const lesson_run *r)
{
    const double apart_s = 60;
    const boil_history *mine = &r->done.central;
    size_t spell = decisive_spell(mine);
    if (a->count < LESSON_SHOWN || r == &a->runs[1] || spell == mine->quiet_count)
        return 0;
    const boil_quiet_result *theirs = abreast_spell(mine, spell, &a->runs[1].done.central);
    double later_s = theirs != NULL ? theirs->end_s - mine->quiet[spell].end_s : 0;
    return fabs(later_s) >= apart_s ? later_s : 0; /* nor where it never came back */
}

/* The run whose next event comes first; count: none has one. */
static size_t first_of(const lesson_answer *a, const size_t next[])
{
    size_t first = a->count;
    for (size_t i = 0; i < a->count; i++) {
        const replay *r = &a->runs[i].replay;
        if (next[i] < r->events_count &&
            (first == a->count || r->events[next[i]].time_s < a->runs[first].replay.events[next[first]].time_s))
            first = i;
    }
    return first;
}

lesson_line *lesson_lines(const lesson_answer *a, size_t *count)
{
    size_t most = 1, next[LESSON_SHOWN] = {0}, first;
    for (size_t i = 0; i < a->count; i++)
        most += a->runs[i].replay.events_count;
    lesson_line *lines = memory_needed(calloc(most, sizeof *lines));
    *count = 0;
    while (lines != NULL && (first = first_of(a, next)) < a->count) {
        lesson_line *l = &lines[(*count)++];
        l->time_s = a->runs[first].replay.events[next[first]].time_s;
        for (size_t i = 0; i < a->count; i++) {
            const replay *r = &a->runs[i].replay;
            l->of[i] = r->events + next[i];
            for (; next[i] < r->events_count && floor(r->events[next[i]].time_s) == floor(l->time_s); next[i]++)
                l->count[i]++;
        }
    }
    return lines;
}
