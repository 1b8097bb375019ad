#include "practise/back_page.h"

#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "lesson/debrief.h"
#include "practise/afterwards.h"
#include "replay/page/answer.h"

typedef TEXT_OF(sizeof(((schedule_line *)NULL)->words)) act_words;

static void add_time(act_words *w, double over_s)
{
    TEXT_ADD(w->text, " over %s", format_duration(over_s).text);
}

/* An act that care has changed, in words of the schedule. `as_done`: those of the act it came of. */
static act_words words_with_care(const boil_action *a, const char *as_done, const debrief_care *c, unit_system u)
{
    act_words w = {""};
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        if (c->parts > 1)
            TEXT_ADD(w.text, "%s of the ", SHOWN(u, MASS, a->is.load.mass_kg));
        TEXT_ADD(w.text, "%s%s", as_done, c->drained ? ", its hollows emptied" : "");
        break;
    case BOIL_ACTION_WATER:
        TEXT_ADD(w.text, "%s of water", SHOWN(u, VOLUME, a->is.water.mass_kg / boil_water_density(a->is.water.temperature_K)));
        add_time(&w, a->is.water.over_s);
        break;
    case BOIL_ACTION_SALTS:
        TEXT_ADD(w.text, "%s of salts", SHOWN(u, MASS, a->is.salts.mass_kg));
        add_time(&w, a->is.salts.over_s);
        break;
    case BOIL_ACTION_LIQUID:
        TEXT_ADD(w.text, "%s of liquid", SHOWN(u, MASS, a->is.liquid.mass_kg));
        add_time(&w, a->is.liquid.over_s);
        break;
    case BOIL_ACTION_HEAT:
        TEXT_ADD(w.text, "heat %.0f %%", 100 * a->is.heat.dial);
        break;
    default:
        TEXT_ADD(w.text, "mixer on");
    }
    return w;
}

/* A scenario in which each act is done with care: it holds what `s` and the debrief hold, and only its words are its own. */
static scenario with_care(const scenario *s, const debrief *d, unit_system u)
{
    scenario cared = *s;
    size_t count = d->care.count;
    schedule_wording *w = &cared.wording;
    cared.schedule = d->care;
    w->lines = memory_needed(calloc(count + 1, sizeof *w->lines));
    w->line_of = memory_needed(calloc(count + 1, sizeof *w->line_of));
    w->lines_count = w->lines != NULL ? count : 0;
    for (size_t i = 0; w->lines != NULL && w->line_of != NULL && i < count; i++) {
        size_t of = d->origin[i];
        const boil_action *a = &d->care.actions[i];
        const schedule_line *as_done = &s->wording.lines[s->wording.line_of[of]];
        bool changed = debrief_change_of(&d->acts[of]) != DEBRIEF_SAME;
        w->line_of[i] = i;
        w->lines[i].line = as_done->line;
        snprintf(w->lines[i].words, sizeof w->lines[i].words, "%s",
                 changed ? words_with_care(a, as_done->words, &d->acts[of], u).text : as_done->words);
    }
    return cared;
}

static void forget_words(scenario *cared)
{
    free(cared->wording.lines);
    free(cared->wording.line_of);
}

static boil_outcome look_back(const scenario *s, debrief *d)
{
    carried_out o;
    boil_outcome outcome = afterwards_carried_out(s, &o);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = debrief_of(s->lesson.given ? &s->lesson : NULL, &s->plant, &s->schedule, &o.central, &o.found, &o.possible, d);
    carried_out_free(&o);
    return outcome;
}

static boil_outcome show(const scenario *s, const scenario *cared, const output *to, bool *written)
{
    lesson_answer *a = calloc(1, sizeof *a);
    if (a == NULL)
        return BOIL_NO_MEMORY;
    boil_outcome outcome = lesson_answer_of_shift(s, cared, a);
    if (outcome == BOIL_OK)
        *written = lesson_page_fits(a, to) && lesson_page_write(a, to, to->html);
    lesson_answer_free(a);
    free(a);
    return outcome;
}

boil_outcome back_page_write(const shift *s, unit_system u, const char *path, bool *written)
{
    scenario asked;
    const scenario *of;
    debrief d;
    const output to = {.html = path, .system = u};
    *written = false;
    boil_outcome outcome = afterwards_scenario(s, &asked, &of);
    if (outcome == BOIL_OK)
        outcome = look_back(of, &d);
    if (outcome == BOIL_OK) {
        scenario cared = with_care(of, &d, u);
        outcome = memory_was_refused() ? BOIL_NO_MEMORY : show(of, d.bad > 0 ? &cared : NULL, &to, written);
        forget_words(&cared);
        debrief_free(&d);
    }
    scenario_free(&asked);
    return outcome;
}
