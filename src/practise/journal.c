#include "practise/journal.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/memory.h"
#include "base/words.h"
#include "scenario/keys.h"

#define SCHEDULE "schedule"

static bool is_given(const scenario *s, const char *words)
{
    return s->settings[key_index(key_find("", words, strlen(words)))].state == SETTING_GIVEN;
}

/* Of jobs that nobody has planned a schedule says no end: as long as the plan may be, an open one a shift of eight hours, common practice,
   no source; and as long as any job asks for. */
static double lasts_s(const scenario *s)
{
    const double shift_s = 8 * 3600;
    if (s->jobs.count == 0 || is_given(s, "duration"))
        return s->schedule.duration_s;
    double end_s = isfinite(s->plan.end_s) ? s->plan.end_s : shift_s;
    for (size_t i = 0; i < s->jobs.count; i++) {
        const boil_plan_job *j = &s->jobs.list[i].job;
        end_s = fmax(end_s, fmax(j->earliest_s + j->most_s, isfinite(j->due_s) ? j->due_s : 0));
    }
    return ceil(end_s);
}

/* NULL: an unknown one. */
static const char *section_opened(const cursor *c)
{
    const char *name = words_skip(c->at + 1, c->end), *close = memchr(c->at, ']', (size_t)(c->end - c->at));
    const char *const *all = key_sections();
    while (*all != NULL &&
           !(close != NULL && close >= name && words_same(name, (size_t)(words_trim(name, close) - name), *all)))
        all++;
    return *all;
}

/* "schedule = acts.csv", above the first section. */
static bool names_sheet(const cursor *c)
{
    const char *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    return equals != NULL && words_same(c->at, (size_t)(words_trim(c->at, equals) - c->at), SCHEDULE);
}

/* What a file without the acts is written from, line by line. */
typedef struct {
    const scenario *read;
    FILE *above, *below, *left, *to;
    bool keeps, in_section, in_schedule;
    bool in_script; /* of a lesson: what others do with the shift is not done beside what was done */
} parting;

static void part_section(parting *p, const cursor *c)
{
    if (!p->in_section && !is_given(p->read, "duration"))
        fprintf(p->to, "duration = %.0f s\n\n", lasts_s(p->read));
    if (p->in_schedule)
        p->to = p->below;
    const char *section = section_opened(c);
    p->in_section = true;
    p->in_schedule = section != NULL && strcmp(section, SCHEDULE) == 0;
    p->in_script = section != NULL && key_section_is_script(section);
}

/* The acts and what stands between them are left out, unless they are kept: with their header they go with what is above. */
static void part_line(parting *p, const source *file, size_t line)
{
    cursor c = cursor_of_line(file, line, NULL);
    bool done = cursor_done(&c), header = !done && *c.at == '[';
    if (header)
        part_section(p, &c);
    bool left_out = p->in_section ? p->in_script || (p->in_schedule && !header && !p->keeps) : !done && names_sheet(&c);
    if (left_out && p->in_schedule && !done)
        fprintf(p->left, "%.*s\n", (int)(c.end - c.at), c.at);
    if (!left_out)
        fprintf(p->to, "%.*s\n", (int)file->lines[line - 1].length, file->lines[line - 1].text);
}

static bool part(journal *j, const source *file, const scenario *read)
{
    size_t above, below, left;
    parting p = {.read = read,
                 .keeps = j->kept > 0,
                 .above = memory_stream(&j->above, &above),
                 .below = memory_stream(&j->below, &below),
                 .left = memory_stream(&j->left, &left)};
    if (p.above != NULL && p.below != NULL && p.left != NULL) {
        p.to = p.above;
        for (size_t line = 1; line <= file->count; line++)
            part_line(&p, file, line);
        if (p.to == p.above && !p.in_schedule)
            fputs("\n[" SCHEDULE "]\n", p.above);
    }
    bool good = p.above != NULL && memory_stream_close(p.above, &j->above);
    good = p.below != NULL && memory_stream_close(p.below, &j->below) && good;
    return p.left != NULL && memory_stream_close(p.left, &j->left) && good;
}

bool journal_begin(journal *j, const source *file, const scenario *read)
{
    bool keeps = read->lesson.given && read->run_sheet == NULL;
    *j = (journal){.name = text_copy(file->name, strlen(file->name)),
                   .frame = {read->times, is_given(read, "start"), read->start_s, lasts_s(read)},
                   .kept = keeps ? read->schedule.count : 0,
                   .left_out = keeps ? 0 : read->schedule.count};
    return j->name != NULL && part(j, file, read);
}

static void free_act(journal_act *a)
{
    free(a->doing);
    free(a->asked);
}

void journal_free(journal *j)
{
    for (size_t i = 0; i < j->count; i++)
        free_act(&j->acts[i]);
    free(j->acts);
    free(j->name);
    free(j->above);
    free(j->below);
    free(j->left);
    *j = (journal){0};
}

static char *copy_of(const char *text)
{
    return text != NULL ? text_copy(text, strlen(text)) : NULL;
}

bool journal_add(journal *j, const journal_act *act)
{
    journal_act a = *act, *acts = boil_array_reserve(j->acts, &j->capacity, j->count, sizeof *acts);
    a.doing = copy_of(act->doing);
    a.asked = copy_of(act->asked);
    if (acts != NULL)
        j->acts = acts;
    if (acts == NULL || a.doing == NULL || (act->asked != NULL && a.asked == NULL)) {
        free_act(&a);
        return false;
    }
    acts[j->count++] = a;
    return true;
}

void journal_drop(journal *j)
{
    if (j->count > 0)
        free_act(&j->acts[--j->count]);
}

moment_text journal_moment(const journal *j, double s)
{
    return moment_words(&j->frame, s);
}

static void write_act(const journal *j, const journal_act *a, journal_view v, FILE *to)
{
    if (a->asked != NULL && v == JOURNAL_ASKED) {
        fprintf(to, "%s when %s for %g s %s\n", journal_moment(j, a->time_s).text, a->quiet ? "quiet" : "boiling",
                fmax(a->for_s, 1), a->doing);
        return;
    }
    if (a->asked != NULL)
        fprintf(to, "# %s\n", a->asked);
    fprintf(to, "%s%s%s\n", a->planned ? "" : journal_moment(j, a->time_s).text, a->planned ? "" : " ", a->doing);
}

static void write_all(const journal *j, journal_view v, FILE *to)
{
    fputs(j->above, to);
    for (size_t i = 0; i < j->count; i++)
        write_act(j, &j->acts[i], v, to);
    if (j->below[0] != '\0')
        fputc('\n', to);
    fputs(j->below, to);
}

char *journal_text(const journal *j, journal_view v, size_t *length)
{
    char *text = NULL;
    FILE *to = memory_stream(&text, length);
    if (to == NULL)
        return NULL;
    write_all(j, v, to);
    return memory_stream_close(to, &text) ? text : NULL;
}

boil_outcome journal_read(const journal *j, journal_view v, scenario *out, messages *m)
{
    scenario_text t = {.path = j->name};
    size_t length = 0;
    char *text = journal_text(j, v, &length);
    *out = (scenario){0};
    boil_outcome outcome = BOIL_BAD_INPUT;
    if (source_of_bytes(&t.text, j->name, text, length, m))
        outcome = scenario_of_text(&t, NULL, 0, out, m);
    scenario_text_free(&t);
    return m->lost ? BOIL_NO_MEMORY : outcome;
}

size_t journal_last_line(const journal *j)
{
    size_t line = text_lines(j->above);
    for (size_t i = 0; i < j->count; i++)
        line += j->acts[i].asked != NULL ? 2 : 1;
    return line;
}
