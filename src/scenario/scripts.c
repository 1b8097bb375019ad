#include "scenario/scripts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "habits/habits.h"

/* The acts of [schedule], and behind them those of a script. What is said of the former was said before, where they stand. */
typedef struct {
    const script_reader *reader;
    schedule_draft draft;
    messages said_before;
} script_draft;

void script_free(scenario_script *s)
{
    boil_schedule_free(&s->schedule);
    schedule_wording_free(&s->wording);
    *s = (scenario_script){0};
}

static void act(script_draft *s, cursor *c)
{
    habits_of_line(c);
    schedule_read(&s->draft, c, c);
}

static void begin(const script_reader *r, script_draft *s)
{
    *s = (script_draft){.reader = r};
    messages_init(&s->said_before);
    s->draft = schedule_begin(r->common->reader.plant, r->common->reader.bath_known, &r->common->frame);
    s->draft.reader.positions = r->common->reader.positions;
    s->draft.reader.measures = r->common->reader.measures;
    s->draft.breaks = r->common->breaks;
    if (r->sheet->bytes != NULL)
        run_sheet_read(r->sheet, &s->draft, &s->said_before);
    for (size_t i = 0; i < r->lines_count && !messages_full(&s->said_before); i++) {
        cursor c = cursor_of_line(r->text, r->lines[i], &s->said_before);
        act(s, &c);
    }
}

/* What an act of [schedule] has against it only with those of the script beside it is said at the script. */
static void finish(script_draft *s, const cursor *at, scenario_script *out)
{
    const script_reader *r = s->reader;
    messages *before = &s->said_before;
    if (!schedule_finish(&s->draft, &out->schedule, &out->wording) || before->lost)
        messages_lost(r->messages);
    if (r->common_good && messages_any(before) && !before->lost) {
        size_t i = 0;
        while (before->list[i].remark)
            i++;
        cursor_error(at, at->at, "together with line %zu of [schedule]: %s", before->list[i].line, before->list[i].text);
    }
    schedule_draft_free(&s->draft);
    messages_free(before);
}

void script_read(const script_reader *r, const script_section *s, scenario_script *out)
{
    script_draft draft;
    cursor at = cursor_of_line(r->text, s->header, r->messages);
    begin(r, &draft);
    for (size_t i = 0; i < s->lines_count && !messages_full(r->messages); i++) {
        cursor c = cursor_of_line(r->text, s->lines[i], r->messages);
        act(&draft, &c);
    }
    finish(&draft, &at, out);
}

/* A line of plain words up to its end, or NULL, with a message. */
static char *words_read(const cursor *c, const char *at, const char *end, const char *what)
{
    end = words_trim(at, end);
    if (at == end) {
        cursor_error(c, at, "%s", what);
        return NULL;
    }
    char *text = text_copy(at, (size_t)(end - at));
    if (text == NULL)
        messages_lost(c->messages);
    return text;
}

static void stop_read(const script_reader *r, cursor *c, lesson *l)
{
    quantity q;
    const char *start = c->at;
    if (!moment_read(&r->common->frame, c, "at", &q) || !moment_within(&r->common->frame, c, q.text, q.si))
        return;
    if (!cursor_take(c, "ask")) {
        cursor_error(c, c->at, "expected 'at %s ask QUESTION'", words_quoted(q.text, q.length).text);
        return;
    }
    if (l->stops_count == LESSON_STOPS_MAX) {
        cursor_error(c, start, "a lesson stops at most %d times", LESSON_STOPS_MAX);
        return;
    }
    if (l->stops_count > 0 && q.si <= l->stops[l->stops_count - 1].at_s) {
        cursor_error(c, q.text, "a stop comes after the one before it");
        return;
    }
    cursor_done(c);
    char *asks = words_read(c, c->at, c->end, "'ask' has no question behind it");
    if (asks != NULL)
        l->stops[l->stops_count++] = (lesson_stop){q.si, asks};
}

/* Acts with semicolons between them, not before the stop that they answer. */
static void choice_acts(const script_reader *r, cursor *c, double stop_s, scenario_script *out)
{
    script_draft draft;
    cursor_done(c);
    cursor whole = *c;
    begin(r, &draft);
    size_t before = draft.draft.count;
    while (c->at < c->end) {
        const char *end = memchr(c->at, ';', (size_t)(c->end - c->at));
        cursor one = *c;
        one.end = words_trim(c->at, end != NULL ? end : c->end);
        if (!cursor_done(&one))
            act(&draft, &one);
        c->at = end != NULL ? end + 1 : c->end;
    }
    bool early = false;
    for (size_t i = before; i < draft.draft.count; i++)
        early = early || draft.draft.list[i].action.time_s < stop_s;
    if (early)
        cursor_error(&whole, whole.at, "an act of this answer comes before its question is asked");
    finish(&draft, &whole, out);
}

static void choice_read(const script_reader *r, cursor *c, scenario *out)
{
    lesson *l = &out->lesson;
    cursor_done(c);
    const char *start = c->at, *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (l->stops_count == 0)
        cursor_error(c, start, "an answer stands below its question: write 'at MOMENT ask QUESTION' above it");
    else if (equals == NULL)
        cursor_error(c, start, "expected 'choice ANSWER = ACT': behind '=' stands what is done, or nothing");
    else if (l->choices_count == LESSON_CHOICES_MAX)
        cursor_error(c, start, "a lesson has at most %d choices", LESSON_CHOICES_MAX);
    else {
        char *says = words_read(c, start, equals, "'choice' has no answer behind it");
        c->at = equals + 1;
        if (says == NULL)
            return;
        choice_acts(r, c, l->stops[l->stops_count - 1].at_s, &out->choices[l->choices_count]);
        l->choices[l->choices_count++] = (lesson_choice){l->stops_count - 1, says};
    }
}

static void check_answers(const script_reader *r, const script_section *s, const lesson *l)
{
    cursor at = cursor_of_line(r->text, s->header, r->messages);
    size_t answers[LESSON_STOPS_MAX] = {0};
    for (size_t i = 0; i < l->choices_count; i++)
        answers[l->choices[i].stop]++;
    for (size_t i = 0; i < l->stops_count; i++)
        if (answers[i] < 2)
            cursor_error(&at, at.at, "question %zu has %s: give it two at least", i + 1,
                         answers[i] == 0 ? "no answer" : "one answer");
}

void script_choices_read(const script_reader *r, const script_section *s, scenario *out)
{
    bool good = !messages_any(r->messages);
    for (size_t i = 0; i < s->lines_count && !messages_full(r->messages); i++) {
        cursor c = cursor_of_line(r->text, s->lines[i], r->messages);
        if (cursor_take(&c, "at"))
            stop_read(r, &c, &out->lesson);
        else if (cursor_take(&c, "choice"))
            choice_read(r, &c, out);
        else
            cursor_error(&c, c.at, "expected 'at MOMENT ask QUESTION' or 'choice ANSWER = ACT'");
    }
    if (good && !messages_any(r->messages))
        check_answers(r, s, &out->lesson);
}
