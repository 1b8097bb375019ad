#include "practise/briefing.h"

#include <string.h>

#include "describe/report.h"

static void sentence(FILE *to, const char *label, const char *words)
{
    if (words != NULL)
        text_wrapped(to, text_plain(words).text, fprintf(to, "%s", label), label[0] != '\0' ? 2 : 0, REPORT_WIDTH);
}

static void in_any_case(const shift *s, FILE *to)
{
    const scenario *of = s->scenario;
    size_t shown = s->journal.kept < 6 ? s->journal.kept : 6;
    if (shown > 0)
        fputs("In any case:\n", to);
    for (size_t i = 0; i < shown; i++)
        fprintf(to, "  %8s  %s\n", format_clock_exact(of->start_s, of->schedule.actions[i].time_s).text,
                text_plain(action_name_of(of, i).text).text);
    if (shown < s->journal.kept)
        fprintf(to, "  ... and %zu more\n", s->journal.kept - shown);
}

static void has_to_hold(const lesson *l, FILE *to)
{
    fputs("What has to hold at the end:\n", to);
    for (size_t i = 0; i < l->terms_count; i++)
        fprintf(to, "  %-40s %s\n", l->terms[i].measure->title, lesson_limit_text(&l->terms[i]).text);
}

/* As they stand in the file, to be typed one by one; so many that a screen holds the whole. */
static void print_lines(const char *lines, FILE *to)
{
    size_t count = 0, most = 10;
    for (const char *at = lines, *end; *at != '\0'; at = end + 1) {
        TEXT_OF(400) line = {""};
        end = strchr(at, '\n');
        TEXT_ADD(line.text, "%.*s", (int)(end - at), at);
        if (count++ < most)
            text_wrapped(to, line.text, fprintf(to, "  "), 6, REPORT_WIDTH);
    }
    if (count > most)
        fprintf(to, "   ... and %s more\n", format_count(count - most, "line", "lines").text);
}

/* Of a shift that is no lesson: what the file has done and planned, and nobody does now. */
static void left_to_you(const shift *s, const scenario *read, FILE *to)
{
    const journal *j = &s->journal;
    if (j->left_out > 0)
        fprintf(to, "The file's own schedule, %s, is left to you: nothing is done by itself%s\n",
                format_count(j->left_out, "act", "acts").text, j->left[0] != '\0' ? ":" : ".");
    print_lines(j->left, to);
    if (read->jobs.count > 0)
        fprintf(to, "%s in no plan yet: load them yourself.\n", format_count(read->jobs.count, "job is", "jobs are").text);
}

void briefing_write(const shift *s, const scenario *read, FILE *to)
{
    const lesson *l = &s->scenario->lesson;
    text_wrapped(to, text_plain(s->scenario->title).text, 0, 0, REPORT_WIDTH);
    fputs("This is a prediction on a screen. Nothing learned here allows anything at a\nreal tank.\n", to);
    sentence(to, "Goal:", l->goal);
    sentence(to, "", l->question);
    in_any_case(s, to);
    if (l->given)
        has_to_hold(l, to);
    left_to_you(s, read, to);
}
