#include "commands/run/page/sections.h"

#include <string.h>

#include "describe/verdict.h"

/* What of gnuplot's SVG is taken over: the size, and all within the outermost element behind its title. */
typedef struct {
    const char *size, *size_end; /* "0 0 900 990" */
    const char *body, *end;
} drawing;

static const char *behind(const char *at, const char *what)
{
    const char *found = at != NULL ? strstr(at, what) : NULL;
    return found != NULL ? found + strlen(what) : NULL;
}

/* False when it is not as gnuplot writes it. */
static bool drawing_of(const picture_drawn *p, drawing *d)
{
    if (p->bytes == NULL)
        return false;
    d->size = behind(behind(p->bytes, "<svg"), "viewBox=\"");
    d->size_end = d->size != NULL ? strchr(d->size, '"') : NULL;
    d->body = behind(d->size_end, "</desc>");
    d->end = NULL;
    for (const char *at = d->body; (at = at != NULL ? strstr(at, "</svg>") : NULL) != NULL; at++)
        d->end = at;
    return d->end != NULL && strspn(d->size, "0123456789. ") >= (size_t)(d->size_end - d->size);
}

/* Names of gnuplot's plots would come up beside the mouse, and be read aloud. */
static void body(FILE *to, const drawing *d)
{
    static const char name[] = "<title>gnuplot_plot", name_end[] = "</title>";
    const char *at = d->body;
    for (const char *cut; (cut = strstr(at, name)) != NULL && cut < d->end; at = behind(cut, name_end)) {
        fwrite(at, 1, (size_t)(cut - at), to);
        if (behind(cut, name_end) == NULL)
            return;
    }
    fwrite(at, 1, (size_t)(d->end - at), to);
}

static void figure(html *h, const carried_out *o, unit_system s, const drawing *d)
{
    html_open(h, "figure", NULL);
    html_open(h, "div", "class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"picture, may scroll sideways\"");
    fprintf(h->to,
            "\n<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
            "viewBox=\"%.*s\" role=\"img\" aria-labelledby=\"picture-title picture-text\">",
            (int)(d->size_end - d->size), d->size);
    html_element(h, "title", "id=\"picture-title\"", "The bath over the clock");
    html_element(h, "desc", "id=\"picture-text\"",
                 "Curves of temperature and boiling point, steam, level and floating water; below them bars of what is "
                 "done and the findings as numbers. %s.",
                 verdict_of(o, s).text);
    body(h->to, d);
    fputs("</svg>", h->to);
    html_close(h);
    html_element(h, "figcaption", NULL,
                 "Grey: the bath is quiet. Numbers stand where a finding begins; they are listed below the curves.");
    html_close(h);
}

void page_picture(html *h, const carried_out *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem)
{
    drawing d;
    html_open(h, "section", "aria-labelledby=\"picture\"");
    html_element(h, "h2", "id=\"picture\"", "Picture");
    if (drawing_of(drawn, &d))
        figure(h, o, s, &d);
    else
        html_element(h, "p", NULL, "No picture could be drawn: %s.", problem->text);
    html_close(h);
}
