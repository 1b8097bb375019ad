#include "scenario/draft.h"

#include <string.h>

int draft_section(const char *section)
{
    const char *const *all = key_sections();
    for (int i = 0; all[i] != NULL; i++)
        if (strcmp(all[i], section) == 0)
            return i;
    return -1;
}

size_t draft_section_line(const draft *d, const char *section)
{
    int index = draft_section(section);
    return index >= 0 ? d->section_line[index] : 0;
}

bool draft_has(const draft *d, const char *section)
{
    return draft_section_line(d, section) > 0;
}

const setting_line *draft_line(const draft *d, const char *section, const char *words)
{
    return &d->found[key_index(key_named(section, words))];
}

scenario_setting *draft_setting(draft *d, const char *section, const char *words)
{
    return &d->out->settings[key_index(key_named(section, words))];
}

bool draft_next_line(const draft *d, draft_kind kind, size_t *next, cursor *c)
{
    const draft_lines *l = &d->lines[kind];
    if (*next == l->count || messages_full(d->messages))
        return false;
    *c = cursor_of_line(d->text, l->list[(*next)++], d->messages);
    return true;
}

void draft_missing(const draft *d, const char *section, const char *what)
{
    size_t line = draft_section_line(d, section);
    const source_line *last = &d->text->lines[d->text->count - 1];
    if (line > 0)
        messages_add(d->messages, d->text, line, cursor_of_line(d->text, line, d->messages).at, "[%s] needs %s", section, what);
    else
        messages_add(d->messages, d->text, d->text->count, last->text + last->length, "a section [%s] with %s is missing",
                     section, what);
}

void draft_report(draft *d, const char *section, const char *problem)
{
    size_t line = draft_has(d, section) ? draft_section_line(d, section) : 1;
    if (problem != NULL)
        messages_add(d->messages, d->text, line, cursor_of_line(d->text, line, d->messages).at, "%s", problem);
}

void draft_report_setting(draft *d, const char *section, const char *words, const char *problem)
{
    const cursor *value = &draft_line(d, section, words)->value;
    if (problem != NULL && value->at != NULL)
        cursor_error(value, value->at, "%s", problem);
    else
        draft_report(d, section, problem);
}
