#include "random/draft.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "random/stream.h"
#include "scenario/keys.h"

draft_token draft_quantity(unit_dimension d, double si)
{
    draft_token t;
    snprintf(t.text, sizeof t.text, "{%d %.17g}", (int)d, si);
    return t;
}

draft_token draft_moment(double s)
{
    draft_token t;
    snprintf(t.text, sizeof t.text, "{@ %.17g}", s);
    return t;
}

int draft_group(draft *d)
{
    return d->groups++;
}

void draft_add(draft *d, const char *section, int group, const char *format, ...)
{
    va_list arguments;
    draft_line *line = &d->lines[d->count++];
    if (d->count > DRAFT_LINES)
        abort();
    *line = (draft_line){.section = section, .group = group};
    va_start(arguments, format);
    vsnprintf(line->line.text, sizeof line->line.text, format, arguments);
    va_end(arguments);
}

static uint64_t mixed(uint64_t a, uint64_t b)
{
    stream r = {a ^ (b * UINT64_C(0x2545f4914f6cdd1d))};
    return boil_stream_next(&r);
}

static const unit *unit_for(unit_dimension d, uint64_t chosen)
{
    size_t count = 0;
    while (unit_listed(d, count) != NULL)
        count++;
    return unit_listed(d, chosen == 0 || count < 2 ? 0 : 1 + (size_t)(chosen % (count - 1)));
}

static void write_quantity(unit_dimension d, double si, uint64_t chosen, FILE *to)
{
    const unit *u = unit_for(d, chosen);
    fprintf(to, "%.15g %s", unit_from_si(d, u->spellings[0], si), u->spellings[0]);
}

static void write_moment(const draft *d, const draft_style *s, double moment_s, FILE *to)
{
    double wall_s = d->by_clock ? fmod(d->start_s + s->later_s, 86400) : 0;
    long at = lround(moment_s + wall_s), day = at / 86400;
    at -= d->by_clock ? day * 86400 : 0;
    fprintf(to, "%ld:%02ld:%02ld", at / 3600, at / 60 % 60, at % 60);
    if (d->by_clock && day > 0)
        fprintf(to, "+%ldd", day);
}

static void write_wall_clock(double s, FILE *to)
{
    long at = lround(s) % 86400;
    fprintf(to, "%ld:%02ld", at / 3600, at / 60 % 60);
}

static void write_line(const draft *d, const draft_style *s, const draft_line *line, FILE *to)
{
    uint64_t place = mixed(s->units, (uint64_t)(line - d->lines));
    for (const char *c = line->line.text; *c != '\0'; c++) {
        char *end;
        if (*c != '{') {
            fputc(*c, to);
            continue;
        }
        if (c[1] == '^') {
            write_wall_clock(d->start_s + s->later_s + strtod(c + 2, &end), to);
        } else if (c[1] == '@') {
            write_moment(d, s, strtod(c + 2, &end), to);
        } else {
            unit_dimension of = (unit_dimension)strtol(c + 1, &end, 10);
            place = mixed(place, 1);
            write_quantity(of, strtod(end, &end), s->units == 0 ? 0 : place, to);
        }
        c = end;
    }
    fputc('\n', to);
}

typedef struct {
    uint64_t section, group;
    size_t line;
} rank;

static int by_rank(const void *a, const void *b)
{
    const rank *x = a, *y = b;
    if (x->section != y->section)
        return x->section < y->section ? -1 : 1;
    if (x->group != y->group)
        return x->group < y->group ? -1 : 1;
    return x->line < y->line ? -1 : 1;
}

/* Where a section first stands. */
static uint64_t first_of(const draft *d, const char *section)
{
    size_t i = 0;
    while (strcmp(d->lines[i].section, section) != 0)
        i++;
    return i;
}

static rank rank_of(const draft *d, uint64_t order, size_t line)
{
    const draft_line *l = &d->lines[line];
    uint64_t section = first_of(d, l->section), group = (uint64_t)l->group;
    if (order == 0)
        return (rank){section, group, line};
    return (rank){l->section[0] == '\0' ? 0 : 1 + mixed(order, section) / 2, mixed(order, group), line};
}

void draft_write(const draft *d, const draft_style *s, FILE *to)
{
    rank ranks[DRAFT_LINES];
    const char *section = "";
    for (size_t i = 0; i < d->count; i++)
        ranks[i] = rank_of(d, s->order, i);
    qsort(ranks, d->count, sizeof ranks[0], by_rank);
    for (size_t i = 0; i < d->count; i++) {
        const draft_line *line = &d->lines[ranks[i].line];
        if (strcmp(line->section, section) != 0)
            fprintf(to, "\n[%s]\n", section = line->section);
        write_line(d, s, line, to);
    }
}

bool draft_write_file(const draft *d, const draft_style *s, const char *path)
{
    FILE *to = fopen(path, "w");
    if (to == NULL)
        return false;
    draft_write(d, s, to);
    return fclose(to) == 0;
}

void draft_keep(const draft *d, FILE *to)
{
    fprintf(to, "%.17g %d %d\n", d->start_s, d->by_clock, d->groups);
    for (size_t i = 0; i < d->count; i++)
        fprintf(to, "[%s]%d %s\n", d->lines[i].section, d->lines[i].group, d->lines[i].line.text);
}

/* The names that a draft may hold are static text. */
static const char *section_named(const char *name, size_t length)
{
    for (size_t i = 0; i < key_count(); i++)
        if (strlen(key_at(i)->section) == length && strncmp(key_at(i)->section, name, length) == 0)
            return key_at(i)->section;
    static const char *const others[] = {"",        "schedule", "breaks",  "measures", "uncertain", "lesson",
                                         "careful", "reckless", "choices", "jobs",     "plan",      "must name"};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        if (strlen(others[i]) == length && strncmp(others[i], name, length) == 0)
            return others[i];
    return NULL;
}

bool draft_kept(FILE *from, draft *d)
{
    char text[400];
    int by_clock = 0, group = 0, start = 0;
    *d = (draft){.count = 0};
    if (fgets(text, sizeof text, from) == NULL || sscanf(text, "%lf %d %d", &d->start_s, &by_clock, &d->groups) != 3)
        return false;
    d->by_clock = by_clock != 0;
    while (fgets(text, sizeof text, from) != NULL) {
        char *end = strchr(text, ']');
        const char *section = text[0] == '[' && end != NULL ? section_named(text + 1, (size_t)(end - text - 1)) : NULL;
        text[strcspn(text, "\n")] = '\0';
        if (section == NULL || sscanf(end + 1, "%d%n", &group, &start) != 1)
            return false;
        draft_add(d, section, group, "%s", end + 1 + start + 1);
    }
    return d->count > 0;
}
