#include <stdlib.h>
#include <string.h>

#include "commands/lesson/output.h"
#include "describe/report.h"

static void heading(const lesson_answer *a, FILE *to)
{
    if (a->of != NULL) {
        text_wrapped(to, text_plain(a->of->goal).text, 0, 0, REPORT_WIDTH);
        text_wrapped(to, text_plain(a->of->question).text, 0, 0, REPORT_WIDTH);
        fputc('\n', to);
    }
    for (size_t i = 0; i < a->count; i++) {
        const char *title = a->runs[i].title;
        text_wrapped(to, text_plain(title != NULL ? title : "").text, fprintf(to, "%s ", a->runs[i].name), 3, REPORT_WIDTH);
    }
    if (a->apart.text[0] != '\0')
        text_wrapped(to, a->apart.text, 0, 0, REPORT_WIDTH);
    fputc('\n', to);
}

/* What befalls all at once is said once. */
static bool is_same(const lesson_answer *a, const lesson_line *l)
{
    for (size_t i = 0; i < a->count; i++)
        for (size_t k = 0; k < l->count[0]; k++)
            if (l->count[i] != l->count[0] || strcmp(l->of[i][k].text.text, l->of[0][k].text.text) != 0)
                return false;
    return l->count[0] > 0;
}

/* The clock stands before the first of its second. */
static void told(const lesson_line *l, size_t of, const char *who, const char *clock, FILE *to)
{
    for (size_t k = 0; k < l->count[of]; k++) {
        int used = fprintf(to, "%11s  %-3s", clock, who);
        text_wrapped(to, text_plain(l->of[of][k].text.text).text, used, used + 1, REPORT_WIDTH);
        clock = who = "";
    }
}

/* What came of each, those that may be chosen as well. */
static void outcomes(const lesson_answer *a, FILE *to)
{
    for (size_t i = 0; a->of != NULL && i < a->count + a->choices; i++) {
        const lesson_run *r = &a->runs[i];
        size_t wide = text_characters(r->title, r->title + strlen(r->title));
        wide = wide < 60 ? wide : 60;
        fprintf(to, "%s%s:", i == 0 ? "\n" : "", text_fitted(r->title, wide).text);
        text_wrapped(to, lesson_outcome(a, r).text, (int)wide + 1, 3, REPORT_WIDTH);
    }
    if (a->of != NULL && a->of->debrief != NULL)
        text_wrapped(to, text_plain(a->of->debrief).text, 0, 0, REPORT_WIDTH);
}

void lesson_report(const void *answer, const output *o, FILE *to)
{
    const lesson_answer *a = answer;
    size_t count;
    lesson_line *lines = lesson_lines(a, &count);
    (void)o;
    heading(a, to);
    for (size_t i = 0; i < count; i++) {
        formatted_text clock = format_clock_exact(a->start_s, lines[i].time_s);
        bool same = a->count > 1 && is_same(a, &lines[i]), first = true;
        for (size_t k = 0; k < (same ? 1 : a->count); k++) {
            told(&lines[i], k, same ? "A B" : a->count > 1 ? a->runs[k].name : "", first ? clock.text : "", to);
            first = first && lines[i].count[k] == 0;
        }
    }
    free(lines);
    outcomes(a, to);
    fputc('\n', to);
    text_wrapped(to, report_caution_words, 0, 0, REPORT_WIDTH);
}
