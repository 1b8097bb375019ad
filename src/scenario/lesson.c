#include "scenario/draft.h"

#include <string.h>

#include "scenario/scripts.h"

/* What belongs to a scripted lesson, in a scenario that is none. */
static void refuse_without_lesson(draft *d)
{
    const char *const *all = key_sections();
    for (size_t i = 0; all[i] != NULL; i++)
        if (key_section_is_script(all[i]) && draft_has(d, all[i]))
            draft_report(d, all[i], "this section belongs to a lesson: a section [lesson] is missing");
}

static bool is_scripted(const draft *d)
{
    const char *const *all = key_sections();
    for (size_t i = 0; all[i] != NULL; i++)
        if (key_section_is_script(all[i]) && draft_has(d, all[i]))
            return true;
    return false;
}

static void read_scripts(draft *d, const script_reader *r)
{
    scenario *out = d->out;
    for (size_t i = 0; i < LESSON_SCRIPTS; i++) {
        const char *section = lesson_script_words[i];
        const draft_lines *lines = &d->lines[DRAFT_SCRIPTS + i];
        script_section s = {section, draft_section_line(d, section), lines->list, lines->count};
        if (s.header == 0 && i != LESSON_IDLE)
            draft_missing(d, section, "what is done then");
        s.header = s.header > 0 ? s.header : draft_section_line(d, DRAFT_LESSON);
        script_read(r, &s, &out->scripts[i]);
    }
    const draft_lines *answers = &d->lines[DRAFT_ANSWERS];
    const script_section choices = {DRAFT_CHOICES, draft_section_line(d, DRAFT_CHOICES), answers->list, answers->count};
    if (draft_has(d, DRAFT_CHOICES))
        script_choices_read(r, &choices, out);
}

static void read_terms(draft *d)
{
    lesson *l = &d->out->lesson;
    cursor c;
    for (size_t next = 0; draft_next_line(d, DRAFT_PASSES, &next, &c);) {
        c.at = (const char *)memchr(c.at, '=', (size_t)(c.end - c.at)) + 1;
        lesson_term_read(&c, l);
    }
    for (size_t next = 0; draft_next_line(d, DRAFT_NAMES, &next, &c);)
        lesson_names_read(&c, l);
    if (d->lines[DRAFT_PASSES].count == 0)
        draft_missing(d, DRAFT_LESSON, "at least one 'pass = ...'");
    if (!draft_line(d, "", "duration")->found)
        draft_missing(d, DRAFT_LESSON, "a 'duration' above the first section: all its scripts are judged at the same moment");
}

/* Once [schedule] is read, and before it is finished. */
void draft_read_lesson(draft *d, const schedule_draft *common)
{
    scenario *out = d->out;
    const draft_lines *acts = &d->lines[DRAFT_ACTS];
    const script_reader r = {common, d->text, acts->list, acts->count, d->sheet, !messages_any(d->messages), d->messages};
    out->lesson.given = draft_has(d, DRAFT_LESSON);
    if (!out->lesson.given) {
        refuse_without_lesson(d);
        return;
    }
    read_terms(d);
    out->lesson.scripted = is_scripted(d);
    if (out->lesson.scripted)
        read_scripts(d, &r);
}
