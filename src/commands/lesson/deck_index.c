/* deck_index.c -- the page that leads to the lessons, and the trainer's key. It needs no script. */
#include "base/program.h"
#include "commands/lesson/deck.h"
#include "replay/page/parts.h"
#include "describe/report.h"

static const char style[] =
    "\n:root{color-scheme:light dark}body{font:1rem/1.4 system-ui,sans-serif;max-width:60rem;margin:0 auto;"
    "padding:1rem}li{margin:.6rem 0}table{border-collapse:collapse}th,td{border:1px solid;padding:.2rem "
    ".5rem;text-align:left;vertical-align:top}.rule{border:2px solid;padding:.4rem .8rem}summary{min-height:"
    "44px;padding:.6rem 0}a{display:inline-block;padding:.4rem 0}\n@media print{body{font-size:9pt}li{break-inside:avoid}"
    "details::details-content{content-visibility:visible}}\n";

void lesson_index_begin(html *h)
{
    html_page(h, false);
    html_element(h, "title", NULL, "Lessons at the tank");
    html_open(h, "style", NULL);
    fputs(style, h->to);
    html_close(h);
    html_close(h);
    html_open(h, "body", NULL);
    html_element(h, "h1", NULL, "Lessons at the tank");
    html_element(h, "p", "class=\"rule\"", "%s", report_caution_words);
    html_element(
        h, "p", NULL,
        "Each page asks once, shows what comes of the answer beside the same shift done with care, and prints as a handout of "
        "two sheets. The key is for who teaches: what has to hold, and what came of it; printed, this page holds every key. "
        "Look at a lesson, let them decide, let them say why in their own words.");
    html_open(h, "ol", NULL);
}

static void value(html *h, const lesson_answer *a, const lesson_run *r, size_t term)
{
    html_element(h, "td", NULL, "%s%s", lesson_value_text(&a->of->terms[term], r->verdict.value[term], r->replay.system).text,
                 r->verdict.holds[term] ? "" : " (does not hold)");
}

static void terms(html *h, const lesson_answer *a)
{
    html_open(h, "table", NULL);
    html_open(h, "thead", NULL);
    html_open(h, "tr", NULL);
    html_element(h, "th", "scope=\"col\"", "What has to hold");
    html_element(h, "th", "scope=\"col\"", "Limit");
    for (size_t i = 0; i < a->count; i++)
        html_element(h, "th", "scope=\"col\"", "%s", a->runs[i].title);
    html_close(h);
    html_close(h);
    html_open(h, "tbody", NULL);
    for (size_t i = 0; i < a->of->terms_count; i++) {
        html_open(h, "tr", NULL);
        html_element(h, "th", "scope=\"row\"", "%s", a->of->terms[i].measure->title);
        html_element(h, "td", NULL, "%s", lesson_limit_text(&a->of->terms[i]).text);
        for (size_t k = 0; k < a->count; k++)
            value(h, a, &a->runs[k], i);
        html_close(h);
    }
    html_close(h);
    html_close(h);
}

static void paragraph(html *h, const char *lead, const char *text)
{
    if (text == NULL)
        return;
    html_open(h, "p", NULL);
    html_element(h, "b", NULL, "%s ", lead);
    html_text(h, text);
    html_close(h);
}

static void answers(html *h, const lesson_answer *a)
{
    html_open(h, "details", NULL);
    html_element(h, "summary", NULL, "Key");
    terms(h, a);
    for (size_t i = 0; i < a->choices; i++) {
        const lesson_run *r = &a->runs[a->count + i];
        paragraph(h, r->title, lesson_outcome(a, r).text);
    }
    paragraph(h, "To say:", a->of->debrief);
    paragraph(h, "Done with care:", a->of->care);
    paragraph(h, "Hint:", a->of->hint);
    html_close(h);
}

/* A file's name as an address: whatever is not plain is written by its number [RFC 3986]. */
static void link_to(html *h, const char *page, const char *words)
{
    fputs("\n<a href=\"", h->to);
    for (const unsigned char *at = (const unsigned char *)page; *at != '\0'; at++)
        if ((*at >= 'a' && *at <= 'z') || (*at >= 'A' && *at <= 'Z') || (*at >= '0' && *at <= '9') || *at == '-' ||
            *at == '.' || *at == '_')
            fputc(*at, h->to);
        else
            fprintf(h->to, "%%%02X", *at);
    fputs("\">", h->to);
    html_text(h, words);
    fputs("</a>", h->to);
}

void lesson_index_add(html *h, const lesson_answer *a, const char *page)
{
    html_open(h, "li", NULL);
    link_to(h, page, a->of->goal);
    html_open(h, "p", NULL);
    html_text(h, a->of->question);
    html_close(h);
    answers(h, a);
    html_close(h);
}

void lesson_index_end(html *h)
{
    html_close(h);
    html_element(h, "p", NULL, "Written by " PROGRAM_NAME " " BOIL_VERSION_TEXT ".");
    html_close(h);
    html_close(h);
}
