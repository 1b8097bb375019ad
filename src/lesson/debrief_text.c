#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "base/format.h"
#include "lesson/aftermath.h"
#include "lesson/debrief.h"

#define WIDTH 79
#define INDENT 10 /* behind the clock */
#define LABEL 34

typedef TEXT_OF(300) words;

static void row(FILE *to, const char *mark, const char *what, const char *one, const char *other)
{
    char line[300];
    snprintf(line, sizeof line, " %s%-*s %-18s %s", mark, LABEL - (int)strlen(mark), what, one, other);
    text_line(to, line);
}

/* Those that fail first. */
static void print_terms(const lesson *l, const lesson_verdict *v, unit_system system, FILE *to)
{
    fprintf(to, "%s: %zu of %s\n", v->passed ? "Passed" : "Not passed", l->terms_count - v->failed,
            format_count(l->terms_count, "term holds", "terms hold").text);
    for (int holds = 0; holds <= 1; holds++)
        for (size_t i = 0; i < l->terms_count; i++)
            if (v->holds[i] == (holds == 1))
                row(to, holds == 1 ? ". " : "x ", l->terms[i].measure->title,
                    lesson_value_text(&l->terms[i], v->value[i], system).text, lesson_limit_text(&l->terms[i]).text);
    if (v->waited > 0)
        fprintf(to, " x %s in vain: what it waits for never came\n", format_count(v->waited, "act waits", "acts wait").text);
    if (v->stopped)
        fputs(" x the run stopped early: what came then is not known\n", to);
}

/* What the bath did, by what was recorded of an act. ------------------------------------------------------------------------ */

static void add_boil(words *w, bool was_quiet, double lost_s, double recovery_s)
{
    const char *lost = was_quiet ? "the bath was quiet" : "the boil was lost";
    if (isnan(lost_s))
        TEXT_ADD(w->text, "it boiled on");
    else if (isnan(recovery_s))
        TEXT_ADD(w->text, "%s, and never %s", lost, was_quiet ? "boiled" : "came back");
    else
        TEXT_ADD(w->text, "%s, and %s %s", lost, was_quiet ? "boiled after" : "back in", format_duration(recovery_s).text);
}

static void add_room(words *w, const char *before, double freeboard_m, unit_system s)
{
    if (freeboard_m > 0)
        TEXT_ADD(w->text, "%sleast room to the rim %s", before, SHOWN(s, LENGTH, freeboard_m));
    else
        TEXT_ADD(w->text, "%sover the rim", before);
}

/* How long the bath had boiled again as it went in; infinite: it was never quiet before, or was as it went in. */
static double steady_s(const boil_history *h, const boil_addition_result *a)
{
    double since_s = -(double)INFINITY;
    for (size_t i = 0; i < h->quiet_count && !a->was_quiet_before; i++)
        if (h->quiet[i].end_s <= a->time_s)
            since_s = fmax(since_s, h->quiet[i].end_s);
    return a->time_s - since_s;
}

static void add_steady(words *w, double steady_s)
{
    const double rounding_s = 0.5;
    if (steady_s < CARE_STEADY_S - rounding_s)
        TEXT_ADD(w->text, "; it went in %s after the boil came back: wait for a minute of steady boil",
                 format_duration(steady_s).text);
}

static void add_addition(words *w, const debrief_shift *of, const boil_addition_result *a)
{
    const double nothing_kg = 0.005, much = 2;
    const unit_system s = of->system;
    const aftermath m = aftermath_of(of->plant, of->history, a);
    if (a->quiet_poured_kg > nothing_kg)
        TEXT_ADD(w->text, "%s went onto the quiet bath; ", SHOWN(s, MASS, a->quiet_poured_kg));
    if (a->kind == BOIL_ACTION_WATER && a->layer_peak_kg > nothing_kg)
        TEXT_ADD(w->text, "at most %s floated; ", SHOWN(s, MASS, a->layer_peak_kg));
    add_boil(w, a->was_quiet_before, a->boil_lost_s, a->recovery_s);
    if (a->steam_before_kg_s > 0 && m.steam_kg_s > much * a->steam_before_kg_s)
        TEXT_ADD(w->text, "; steam %s times that before",
                 lesson_times_text((lesson_value){m.steam_kg_s / a->steam_before_kg_s, m.more_than}).text);
    add_room(w, "; ", m.freeboard_m, s);
}

static words bath_did(const debrief_shift *of, size_t act)
{
    words w = {""};
    const boil_history *h = of->history;
    for (size_t i = 0; i < h->loads_count; i++)
        if (h->loads[i].action == act)
            add_boil(&w, h->loads[i].was_quiet, h->loads[i].boil_lost_s, h->loads[i].recovery_s);
    for (size_t i = 0; i < h->additions_count; i++)
        if (h->additions[i].action == act) {
            add_addition(&w, of, &h->additions[i]);
            add_steady(&w, steady_s(h, &h->additions[i]));
        }
    return w;
}

static const char *title_of(const char *id)
{
    const char *listed, *title = "";
    for (size_t i = 0; (listed = boil_finding_listed(i, &title)) != NULL; i++)
        if (strcmp(listed, id) == 0)
            return title;
    return "";
}

/* What care makes of it. ---------------------------------------------------------------------------------------------------- */

/* The first that comes of an act; NULL: none does. */
static const boil_action *cared_act(const debrief *d, size_t act, size_t *place)
{
    for (*place = 0; *place < d->care.count; ++*place)
        if (d->origin[*place] == act && d->care.actions[*place].kind != BOIL_ACTION_MIXER)
            return &d->care.actions[*place];
    return NULL;
}

static void add_pour(words *w, const debrief_care *c, const boil_action *a, unit_system s)
{
    if (c->less > 0 && a->kind == BOIL_ACTION_WATER)
        TEXT_ADD(w->text, "%s, no more than had gone off as vapour, ", SHOWN(s, MASS, a->is.water.mass_kg));
    if (c->waits || c->sifted)
        TEXT_ADD(w->text, "when boiling for 1 min, ");
    TEXT_ADD(w->text, "over %s", format_duration(action_takes_s(a)).text);
}

static void add_gentle(words *w, const debrief_care *c, double start_s)
{
    TEXT_ADD(w->text, "mixer on, a quarter of the heat until the crystals are gone");
    if (isfinite(c->gone_s))
        TEXT_ADD(w->text, " at %s, then as it was", format_clock(start_s, c->gone_s).text);
}

static words with_care(const debrief *d, const debrief_shift *of, size_t act)
{
    const debrief_care *c = &d->acts[act];
    size_t place;
    const boil_action *a = cared_act(d, act, &place);
    words w = {""};
    if (a == NULL)
        return w;
    if (c->drained)
        TEXT_ADD(w.text, "its hollows emptied before%s", c->parts > 1 ? "; " : "");
    if (c->parts > 1)
        TEXT_ADD(w.text, "in %u parts, each a minute after the boil is back from the one before", c->parts);
    else if (a->kind == BOIL_ACTION_LOAD && c->waits)
        TEXT_ADD(w.text, "%swhen boiling for 1 min", c->drained ? "; " : "");
    if (a->kind == BOIL_ACTION_HEAT && c->gentle)
        add_gentle(&w, c, of->start_s);
    else if (a->kind == BOIL_ACTION_HEAT)
        TEXT_ADD(w.text, "%.0f %%", 100 * a->is.heat.dial);
    else if (a->kind != BOIL_ACTION_LOAD)
        add_pour(&w, c, a, of->system);
    if (place < d->history.acts_count && (c->waits || c->sifted) && !isnan(d->history.acts[place].done_s))
        TEXT_ADD(w.text, ", at %s", format_clock_exact(of->start_s, round(d->history.acts[place].done_s)).text);
    return w;
}

static void line(FILE *to, const char *before, const char *text)
{
    words all = {""};
    TEXT_ADD(all.text, "%s%s", before, text);
    fprintf(to, "%*s", INDENT, "");
    text_wrapped(to, all.text, INDENT, INDENT + 2, WIDTH);
}

static void print_act(const debrief *d, const debrief_shift *of, size_t act, FILE *to)
{
    double done_s = act < of->history->acts_count ? of->history->acts[act].done_s : (double)NAN;
    const debrief_care *c = &d->acts[act];
    int used = fprintf(to, " %-*s", INDENT - 1, isnan(done_s) ? "never" : format_clock_exact(of->start_s, round(done_s)).text);
    text_wrapped(to, text_plain(of->names[act]).text, used, INDENT, WIDTH);
    words did = bath_did(of, act);
    if (did.text[0] != '\0')
        line(to, "", did.text);
    if (debrief_change_of(c) == DEBRIEF_SAME)
        return;
    line(to, "found: ", c->because != NULL ? title_of(c->because) : "");
    line(to, "with care: ", with_care(d, of, act).text);
    if (d->alone_m != NULL) {
        words alone = {"that alone: "};
        add_room(&alone, "", d->alone_m[act], of->system);
        line(to, "", alone.text);
    }
}

static void print_shifts(const debrief *d, const debrief_shift *of, FILE *to)
{
    static const char *const shown[] = {"rim",      "left",  "afloat", "slowest", "surge",
                                        "boils at", "level", "water",  "steel",   "salts"};
    fputc('\n', to);
    row(to, "", "The same shift", "as done", "with care");
    for (size_t k = 0; k < sizeof shown / sizeof shown[0]; k++) {
        const lesson_measure *m = lesson_measure_named(shown[k], strlen(shown[k]));
        const lesson_term t = {.measure = m};
        lesson_value one = lesson_measured(m, of->plant, of->history), other = lesson_measured(m, of->plant, &d->history);
        if (one.si != 0 || other.si != 0)
            row(to, "", m->title, lesson_value_text(&t, one, of->system).text, lesson_value_text(&t, other, of->system).text);
    }
}

static void paragraph(FILE *to, const char *text)
{
    text_wrapped(to, text, 0, 1, WIDTH);
}

static void print_outlook(const debrief *d, const lesson *l, FILE *to)
{
    if (d->bad == 0)
        return;
    if (!d->holds)
        paragraph(to, "Done with care it still does not hold: this plan cannot work.");
    else if (d->gravest >= BOIL_SEVERITY_WARNING)
        paragraph(to, "Done with care it holds in the likely run; in one of the runs of the set it does not: take it as not "
                      "good enough in "
                      "a real shop.");
    if (d->holds && l != NULL && l->care != NULL)
        paragraph(to, text_plain(l->care).text);
}

/* For another try. */
static void print_hint(const lesson *l, const lesson_verdict *v, FILE *to)
{
    words w = {"Hint: "};
    if (l == NULL || l->hint == NULL || v->passed)
        return;
    TEXT_ADD(w.text, "%s", text_plain(l->hint).text);
    paragraph(to, w.text);
}

void debrief_print(const debrief *d, const debrief_shift *of, FILE *to)
{
    const lesson *l = of->lesson;
    if (l != NULL)
        print_terms(l, &d->yours, of->system, to);
    fputs("\nWhat was done, and what the bath did\n", to);
    for (size_t i = 0; i < of->schedule->count; i++)
        print_act(d, of, i, to);
    if (of->schedule->count == 0)
        fputs(" nothing was done\n", to);
    if (d->bad > 0)
        print_shifts(d, of, to);
    fputc('\n', to);
    if (l != NULL && l->debrief != NULL)
        paragraph(to, text_plain(l->debrief).text);
    print_hint(l, &d->yours, to);
    print_outlook(d, l, to);
    if (of->lets_go.latest_s > of->lets_go.earliest_s + 1) {
        words w = {""};
        TEXT_ADD(w.text, "In the runs of the set it lets go between %s and %s.",
                 format_clock_exact(of->start_s, round(of->lets_go.earliest_s)).text,
                 format_clock_exact(of->start_s, round(of->lets_go.latest_s)).text);
        paragraph(to, w.text);
    }
    paragraph(to, "A prediction is never a permission.");
}
