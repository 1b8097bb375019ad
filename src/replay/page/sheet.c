/* sheet.c -- what paper shows, and a browser without the script: four moments, then what was done and what came of it. */
#include <math.h>
#include <stdlib.h>

#include "replay/page/parts.h"
#include "describe/report.h"

#define MOMENTS 4

/* The first is a lesson's own, or for a shift in which nothing happened. */
static const char *const questions[] = {
    "At which moment could it still have been kept from happening, and how?",
    "What did the tank look like just before? What would have told you?",
    "You find water floating on a quiet bath. What do you do first?",
};
static const char calm_question[] = "When was there the least room at the rim, and what took it up?";

typedef struct {
    double s[MOMENTS];
} moments;

/* Of the first run: the start or just before the first load, the fullest layer, the highest level, the end; without a layer a minute before the highest. */
static moments moments_of(const lesson_answer *a)
{
    const carried_out *o = &a->runs[0].done;
    const boil_summary *s = &o->central.summary;
    double high_s = s->level_max_m.time_s;
    double layer_s = s->layer_max_kg.value > REPLAY_AFLOAT_KG ? s->layer_max_kg.time_s : (double)NAN;
    double before_s = layer_s < high_s ? layer_s : fmax(0, high_s - 60);
    moments m = {{0, before_s, high_s, o->central.end_s}};
    if (o->central.loads_count > 0 && o->central.loads[0].time_s < before_s)
        m.s[0] = fmax(0, o->central.loads[0].time_s - 1);
    return m;
}

static void still(html *h, const lesson_answer *a, size_t run, double time_s)
{
    const lesson_run *r = &a->runs[run];
    html_open(h, "figure", NULL);
    lesson_picture(h, a, run, time_s);
    html_open(h, "figcaption", NULL);
    html_element(h, "b", NULL, "%s %s", r->name, format_clock_exact(a->start_s, time_s).text);
    html_text(h, "  ");
    html_text(h, replay_state(&r->replay, time_s).text);
    html_text(h, ".");
    html_close(h);
    html_close(h);
}

static void front(html *h, const lesson_answer *a)
{
    moments m = moments_of(a);
    html_element(h, "h2", NULL, "Four moments");
    html_open(h, "div", "class=\"four\"");
    for (size_t i = 0; i < MOMENTS; i++)
        for (size_t k = 0; k < a->count; k++)
            still(h, a, k, fmin(m.s[i], a->runs[k].done.central.end_s));
    html_close(h);
    html_element(
        h, "p", NULL,
        "Full line: likely. Hatched above it, and the hollow triangle: possible. Dotted: the level without steam. Broken "
        "edge: higher than the law of swell knows. Tank, levels and floating water are to scale; beside it the water ten "
        "times as thick. Each box of the ladder doubles the steam. Loads, bubbles and flames are marks.");
}

static void cell(html *h, const replay_event *first, size_t count)
{
    html_open(h, "td", NULL);
    for (size_t i = 0; i < count; i++) {
        html_text(h, i > 0 ? " " : "");
        html_text(h, first[i].text.text);
    }
    html_close(h);
}

static bool is_grave(const lesson_answer *a, const lesson_line *l)
{
    for (size_t k = 0; k < a->count; k++)
        for (size_t i = 0; i < l->count[k]; i++)
            if (l->of[k][i].grave)
                return true;
    return false;
}

/* Where paper has no room for all: the first, what is grave, and the last. A tank alone has wider cells. */
static bool is_on_paper(const lesson_answer *a, const lesson_line *l, size_t index, size_t count)
{
    size_t room = a->count > 1 ? 16 : 28;
    return count <= room || index + 4 < room || index + 2 >= count || is_grave(a, l);
}

static void line(html *h, const lesson_answer *a, const lesson_line *l, bool on_paper)
{
    html_open(h, "tr", on_paper ? NULL : "class=\"more\"");
    html_element(h, "th", "scope=\"row\"", "%s", format_clock_exact(a->start_s, l->time_s).text);
    for (size_t k = 0; k < a->count; k++)
        cell(h, l->of[k], l->count[k]);
    html_close(h);
}

static void table(html *h, const lesson_answer *a)
{
    size_t count, left = 0;
    lesson_line *lines = lesson_lines(a, &count);
    html_open(h, "table", NULL);
    html_open(h, "thead", NULL);
    html_open(h, "tr", NULL);
    html_element(h, "th", "scope=\"col\"", "Clock");
    for (size_t k = 0; k < a->count; k++) {
        html_open(h, "th", "scope=\"col\"");
        html_text(h, a->runs[k].name);
        html_text(h, "  ");
        html_text(h, a->runs[k].title);
        html_close(h);
    }
    html_close(h);
    html_close(h);
    html_open(h, "tbody", NULL);
    for (size_t i = 0; i < count; i++) {
        bool on_paper = is_on_paper(a, &lines[i], i, count);
        line(h, a, &lines[i], on_paper);
        left += !on_paper;
    }
    html_close(h);
    html_close(h);
    if (left > 0)
        html_element(h, "p", "class=\"left\"", "%s more on the screen.", format_count(left, "line", "lines").text);
    free(lines);
}

static const char *first_question(const lesson_answer *a)
{
    bool calm = true;
    for (size_t i = 0; i < a->count; i++)
        calm = calm && carried_out_gravest(&a->runs[i].done) < BOIL_SEVERITY_WARNING;
    return a->of != NULL ? a->of->question : calm ? calm_question : questions[0];
}

static void back(html *h, const lesson_answer *a)
{
    html_open(h, "div", "class=\"back\"");
    html_element(h, "h2", NULL, "What was done, and what came of it");
    table(h, a);
    html_element(h, "h2", NULL, "In your own words");
    for (size_t i = 0; i < sizeof questions / sizeof questions[0]; i++) {
        html_element(h, "p", NULL, "%zu. %.900s", i + 1, i == 0 ? first_question(a) : questions[i]);
        html_open(h, "div", "class=\"answer\"");
        html_close(h);
    }
    html_element(h, "p", NULL, "%s", report_caution_words);
    html_close(h);
}

void lesson_sheet(html *h, const lesson_answer *a)
{
    html_open(h, "section",
              a->count > 1 ? "id=\"sheet\" aria-label=\"Handout\"" : "id=\"sheet\" class=\"alone\" aria-label=\"Handout\"");
    front(h, a);
    back(h, a);
    html_close(h);
}
