#include <stdlib.h>

#include "base/memory.h"
#include "base/program.h"
#include "files/whole_file.h"
#include "replay/page/parts.h"

static void lines(FILE *to, const char *const list[])
{
    for (size_t i = 0; list[i] != NULL; i++)
        fputs(list[i], to);
}

static void titles(html *h, const lesson_answer *a)
{
    if (a->of != NULL)
        html_text(h, a->of->goal);
    for (size_t i = 0; i < a->count && a->of == NULL; i++) {
        html_text(h, i > 0 ? " / " : "");
        html_text(h, a->runs[i].title);
    }
}

static void head(html *h, const lesson_answer *a)
{
    html_page(h, true);
    html_empty(h, "meta", "name=\"color-scheme\" content=\"light dark\"");
    fputc('\n', h->to);
    html_open(h, "title", NULL);
    titles(h, a);
    html_close(h);
    html_open(h, "style", NULL);
    lines(h->to, page_css);
    html_close(h);
    html_close(h);
}

/* The script stands in a section of XML's that takes "<" as it is. */
static void script(html *h)
{
    const char *const *const files[] = {data_js,   picture_js,  reading_js, strip_js, time_js,
                                        events_js, question_js, keys_js,    start_js};
    html_open(h, "script", NULL);
    fputs("/*<![CDATA[*/\n", h->to);
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
        lines(h->to, files[i]);
    fputs("/*]]>*/", h->to);
    html_close(h);
}

static void foot(html *h, const lesson_answer *a)
{
    html_open(h, "footer", "class=\"legend\"");
    html_open(h, "p", NULL);
    html_text(
        h,
        "Tanks, levels and floating water are to scale, beside the tank the water ten times as thick; each box of the "
        "ladder doubles the steam; loads, bubbles and flames are marks. Hatched and hollow: possible. Written by " PROGRAM_NAME
        " " BOIL_VERSION_TEXT " from ");
    for (size_t i = 0; i < (a->of != NULL ? 1 : a->count); i++) {
        html_text(h, i > 0 ? ", " : "");
        html_text(h, a->runs[i].done.scenario->path);
    }
    html_text(h, a->runs[0].replay.slack > 1 ? "; figures coarser than usual, to keep the page small." : ".");
    html_close(h);
    html_close(h);
}

static void body(html *h, const lesson_answer *a)
{
    html_open(h, "body", NULL);
    lesson_patterns(a, h->to);
    html_open(h, "header", NULL);
    html_open(h, "h1", NULL);
    titles(h, a);
    html_close(h);
    const char *below = a->of != NULL ? a->of->question : a->apart.text;
    if (below[0] != '\0') {
        html_open(h, "p", NULL);
        html_text(h, below);
        html_close(h);
    }
    html_element(
        h, "p", "class=\"rule\"",
        "Hot caustic maims. This replays a prediction; a prediction is never a permission. Face shield, apron, gloves, "
        "boots. Water only while the bath boils.");
    html_close(h);
    html_open(h, "main", NULL);
    fputc('\n', h->to);
    lines(h->to, stage_html);
    lesson_sheet(h, a);
    html_close(h);
    foot(h, a);
    html_open(h, "script", "id=\"data\" type=\"application/json\"");
    fputc('\n', h->to);
    lesson_data(a, h->to);
    html_close(h);
    script(h);
    html_close(h);
}

void lesson_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to)
{
    html h = html_to(to);
    (void)o;
    (void)drawn;
    (void)problem;
    head(&h, answer);
    body(&h, answer);
    html_close(&h);
}

/* Bounds of what a page leaves out: wider where it would be too large to be sent about, bytes. */
static const double slacks[] = {1, 2, 4, 8};
static const size_t page_most = 200 * 1024;

static size_t page_size(const lesson_answer *a, const output *o)
{
    char *text;
    size_t size = 0;
    FILE *to = memory_stream(&text, &size);
    if (to == NULL)
        return 0;
    lesson_page(a, o, NULL, NULL, to);
    memory_stream_close(to, &text);
    free(text);
    return size;
}

bool lesson_page_fits(lesson_answer *a, const output *o)
{
    size_t size = 0;
    for (size_t i = 0; i < sizeof slacks / sizeof slacks[0]; i++) {
        if (!lesson_replays(a, o->system, slacks[i]))
            return false;
        size = o->html != NULL ? page_size(a, o) : 0;
        if (size <= page_most)
            return true;
    }
    return program_complain("the page would have %zu KiB, over the %zu that a page may have: give it a shorter shift",
                            size / 1024, page_most / 1024);
}

bool lesson_page_write(const lesson_answer *a, const output *o, const char *path)
{
    whole_file f;
    if (!whole_file_open(&f, path))
        return false;
    lesson_page(a, o, NULL, NULL, f.to);
    return whole_file_close(&f);
}
