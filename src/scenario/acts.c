#include "scenario/draft.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "files/place.h"
#include "habits/habits.h"

/* A scenario from somebody else must not show what it likes of any file: messages echo what they are about. */
static bool may_be_read(draft *d, const setting_line *line, const char *path, const char *scenario_path, const char *what)
{
    char *folder = place_folder(scenario_path);
    if (folder == NULL)
        messages_lost(d->messages);
    bool may = folder != NULL && (d->sheet_anywhere || place_within(path, folder));
    if (folder != NULL && !may)
        cursor_error(&line->value, line->value.at,
                     "a %s lies in its scenario's folder or below it: move it there, or say --sheet-anywhere", what);
    free(folder);
    return may;
}

/* A file that a setting names, as seen from its scenario's folder. */
typedef struct {
    const setting_line *line;
    const char *path, *what;
    int order;    /* of its messages, among the files of a scenario */
    source *text; /* read once */
} named_file;

static bool read_named(draft *d, const named_file *f, const char *scenario_path)
{
    if (f->text->bytes != NULL)
        return true;
    char *path = place_beside(scenario_path, f->path);
    if (path == NULL)
        messages_lost(d->messages);
    bool good = path != NULL && may_be_read(d, f->line, path, scenario_path, f->what) &&
                source_read(f->text, path, f->order, d->messages);
    free(path);
    return good;
}

static void read_run_sheet(draft *d, schedule_draft *a, const char *scenario_path)
{
    const setting_line *line = draft_line(d, "", DRAFT_SCHEDULE);
    const named_file sheet = {line, d->out->run_sheet, "run sheet", 1, d->sheet};
    if (d->lines[DRAFT_ACTS].count > 0)
        cursor_error(&line->value, line->key_at, "the acts are in a file or in [schedule], not in both");
    else if (read_named(d, &sheet, scenario_path))
        run_sheet_read(d->sheet, a, d->messages);
}

static void read_jobs_file(draft *d, const job_reader *r, const char *scenario_path)
{
    const setting_line *line = draft_line(d, "plan", "jobs");
    const named_file jobs = {line, d->out->plan.jobs_file, "list of jobs", 2, d->jobs};
    if (d->lines[DRAFT_JOBS].count > 0)
        cursor_error(&line->value, line->key_at, "the jobs are in a file or in [jobs], not in both");
    else if (read_named(d, &jobs, scenario_path))
        jobs_read_csv(r, d->jobs, d->messages);
}

/* Where the shift stands, by the names of the jobs. */
static void read_now(draft *d, const job_reader *r)
{
    size_t header = draft_section_line(d, "now"), count = 0;
    cursor *lines = header > 0 ? calloc(d->lines[DRAFT_NOW].count + 1, sizeof *lines) : NULL;
    if (header == 0)
        return;
    if (lines == NULL) {
        messages_lost(d->messages);
        return;
    }
    cursor c, place = cursor_of_line(d->text, header, d->messages);
    for (size_t next = 0; draft_next_line(d, DRAFT_NOW, &next, &c);)
        lines[count++] = c;
    now_read(r, &place, lines, count, &d->out->now);
    free(lines);
}

static void read_jobs(draft *d, schedule_draft *a, const char *scenario_path)
{
    scenario *out = d->out;
    const job_reader r = {schedule_reader(a), out->start_s, out->plan.end_s, &out->jobs};
    const messages *m = d->messages;
    size_t mistakes = m->count - m->remarks;
    if (out->plan.jobs_file != NULL)
        read_jobs_file(d, &r, scenario_path);
    cursor c;
    for (size_t next = 0; out->plan.jobs_file == NULL && draft_next_line(d, DRAFT_JOBS, &next, &c);)
        jobs_read_line(&r, &c);
    out->jobs.partial = m->count - m->remarks > mistakes;
    const char *file = out->plan.jobs_file != NULL && d->jobs->name != NULL ? d->jobs->name : d->text->name;
    out->jobs.file = text_copy(file, strlen(file));
    if (out->jobs.file == NULL)
        messages_lost(d->messages);
    read_now(d, &r);
}

static bool is_act(const char *word)
{
    const action_type *type;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        if (words_same(word, strlen(word), type->keyword))
            return true;
    return false;
}

static void read_measures(draft *d, measure_list *all)
{
    cursor c;
    for (size_t next = 0; draft_next_line(d, DRAFT_MEASURES, &next, &c);) {
        const char *word = c.at;
        if (measure_read(&c, all) && is_act(all->list[all->count - 1].word)) {
            all->count--;
            cursor_error(&c, word, "'%s' is an act: take another word", all->list[all->count].word);
        }
    }
}

void draft_read_actions(draft *d, const char *path)
{
    const setting_line *duration = draft_line(d, "", "duration");
    const setting_line *start = draft_line(d, "", "start"), *times = draft_line(d, "", "times");
    double end_s = duration->good ? d->out->schedule.duration_s : duration->found ? SCHEDULE_LATEST_S : HUGE_VAL;
    moment_frame frame = {d->out->times, start->good, d->out->start_s, end_s};
    if (frame.count == MOMENTS_BY_CLOCK && !start->found)
        cursor_error(&times->value, times->value.at, "'by the clock' needs 'start', the clock at the start");
    schedule_draft a = schedule_begin(&d->out->plant, !messages_any(d->messages), &frame);
    a.reader.positions = (size_t)d->out->plant.tank.positions;
    read_measures(d, &a.reader.measures);
    cursor c;
    for (size_t next = 0; draft_next_line(d, DRAFT_BREAKS, &next, &c);)
        break_read(&frame, &c, &a.breaks);
    read_jobs(d, &a, path);
    if (d->out->run_sheet != NULL)
        read_run_sheet(d, &a, path);
    for (size_t next = 0; draft_next_line(d, DRAFT_ACTS, &next, &c);) {
        habits_of_line(&c);
        schedule_read(&a, &c, &c);
    }
    draft_read_lesson(d, &a);
    if (!schedule_finish(&a, &d->out->schedule, &d->out->wording))
        messages_lost(d->messages);
    schedule_draft_free(&a);
}
