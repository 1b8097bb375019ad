#include <math.h>
#include <string.h>

#include "commands/plan/answer.h"

/* Each is one paragraph, "" where there is nothing to say. */

static plan_words counted(const plan_answer *a)
{
    const plan_odds *o = &a->odds;
    const boil_odds *holds = &o->counted.holds, *back = &o->counted.back;
    plan_words w = {""};
    if (o->plans == 0)
        TEXT_ADD(w.text, "Its odds were not counted.");
    else
        TEXT_ADD(w.text, "Odds: it holds in %s of %s (%s); %s were asked for. Every boil is back in time in %s (%s).",
                 format_chance(holds->chance).text, format_count(holds->count, "draw", "draws").text, format_odds(holds).text,
                 format_chance(o->asked).text, format_chance(back->chance).text, format_odds(back).text);
    return w;
}

static plan_words none(const plan_answer *a)
{
    const plan_odds *o = &a->odds;
    plan_words w = {""};
    if (o->met || o->plans == 0)
        return w;
    TEXT_ADD(w.text, "After %s it was given up", format_count(o->plans, "plan", "plans").text);
    if (o->lacks.text[0] != '\0')
        TEXT_ADD(w.text, ": %.190s", o->lacks.text);
    TEXT_ADD(w.text, ".");
    return w;
}

static plan_words cost(const plan_answer *a)
{
    const plan_odds *o = &a->odds;
    double later_s = a->best->table.value.of[BOIL_PLAN_LAST_OUT_S] - o->without_last_s;
    plan_words w = {""};
    if (!o->replanned)
        return w;
    TEXT_ADD(w.text, "That costs %s against the plan without, which is out at %s and holds in %s (%s).",
             later_s > 0 ? format_duration(later_s).text : "nothing", plan_clock_at(a, o->without_last_s).text,
             format_chance(o->without.holds.chance).text, format_odds(&o->without.holds).text);
    return w;
}

/* What is measured need not be left time for. */
static plan_words measure(const plan_answer *a)
{
    plan_words w = {""};
    if (a->odds.plans > 0 && (a->odds.replanned || !a->odds.met))
        TEXT_ADD(w.text, "What is known better costs less: 'explore', with what '--write' writes, says what to measure first.");
    return w;
}

/* A reading is a reading, in all of them. */
static plan_words as_read(const plan_answer *a)
{
    plan_words w = {""};
    for (size_t i = 0; a->rest != NULL && a->odds.plans > 0 && i < a->scenario->uncertain_count; i++) {
        const uncertain_thing *t = &a->scenario->uncertain[i].thing;
        if (plan_rest_reads(t->key))
            TEXT_ADD(w.text, "%s'%s'", w.text[0] != '\0' ? ", " : "All draws begin with the bath as it was read, and not with ",
                     t->words);
    }
    if (w.text[0] != '\0')
        TEXT_ADD(w.text, " of [uncertain].");
    return w;
}

static plan_words mixing(const plan_answer *a)
{
    plan_words w = {""};
    for (size_t i = 0; i < a->scenario->uncertain_count; i++)
        if (strcmp(a->scenario->uncertain[i].thing.words, "mixing time factor") == 0)
            return w;
    if (a->odds.plans > 0)
        TEXT_ADD(w.text, "The draws mix as is likely: a line 'mixing time factor = 0.34 | 1 | 3' in [uncertain] counts slower "
                         "and faster mixing as well.");
    return w;
}

plan_words plan_odds_told(const plan_answer *a, size_t index)
{
    static plan_words (*const all[])(const plan_answer *a) = {counted, none, cost, as_read, measure, mixing};
    for (size_t i = 0; a->odds.asked > 0 && i < sizeof all / sizeof all[0]; i++) {
        plan_words w = all[i](a);
        if (w.text[0] != '\0' && index-- == 0)
            return w;
    }
    return (plan_words){""};
}
