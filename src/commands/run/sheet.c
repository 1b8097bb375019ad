#include "commands/run/parts.h"

#include <math.h>
#include <stdlib.h>

#define WORDS_WIDTH 30

typedef struct {
    const carried_out *run;
    unit_system system;
    FILE *to;
} sheet;

/* Cells: what stands in a column for a line. A column of loads is blank for additions, and the other way round. */

static formatted_text cell_lost(const sheet *h, const carried_out_line *l)
{
    bool was_quiet = l->load != NULL ? l->load->was_quiet : l->addition->was_quiet_before;
    double lost = l->load != NULL ? l->load->boil_lost_s : l->addition->boil_lost_s;
    if (isnan(lost))
        return (formatted_text){"kept"};
    return was_quiet ? (formatted_text){"was quiet"} : format_clock(h->run->scenario->start_s, lost);
}

static formatted_text cell_back(const sheet *h, const carried_out_line *l)
{
    (void)h;
    double lost = l->load != NULL ? l->load->boil_lost_s : l->addition->boil_lost_s;
    double recovery = l->load != NULL ? l->load->recovery_s : l->addition->recovery_s;
    if (isnan(lost))
        return (formatted_text){"-"};
    return isnan(recovery) ? (formatted_text){"not back"} : format_duration(recovery);
}

static formatted_text cell_lowest(const sheet *h, const carried_out_line *l)
{
    return format_number(h->system, DIM_TEMPERATURE, l->load->lowest_temperature_K);
}

static formatted_text cell_hot(const sheet *h, const carried_out_line *l)
{
    (void)h;
    return isnan(l->load->hot_s) ? (formatted_text){"not hot"} : format_duration(l->load->hot_s);
}

/* What an addition brings, or what a load carries out once it is lifted. */
static formatted_text cell_mass(const sheet *h, const carried_out_line *l)
{
    formatted_text t = {""};
    double mass = l->load != NULL ? l->load->drag_out_kg : l->addition->mass_kg;
    if (mass > 0)
        snprintf(t.text, sizeof t.text, "%c%.40s", l->load != NULL ? '-' : '+', format_number(h->system, DIM_MASS, mass).text);
    return t;
}

static formatted_text cell_steam(const sheet *h, const carried_out_line *l)
{
    (void)h;
    const boil_addition_result *a = l->addition;
    if (!(a->steam_before_kg_s > 0))
        return a->steam_peak_kg_s > 0 ? (formatted_text){"from 0"} : (formatted_text){"none"};
    formatted_text ratio = format_ratio(a->steam_peak_kg_s / a->steam_before_kg_s), more;
    snprintf(more.text, sizeof more.text, ">%.30s", ratio.text);
    return a->steam_more_than ? more : ratio;
}

static formatted_text cell_layer(const sheet *h, const carried_out_line *l)
{
    return format_number(h->system, DIM_MASS, l->addition->layer_peak_kg);
}

static formatted_text cell_rise(const sheet *h, const carried_out_line *l)
{
    return format_number(h->system, DIM_LENGTH, l->addition->level_rise_m);
}

typedef enum { OF_BOTH, OF_LOADS, OF_ADDITIONS } column_owner;

typedef struct {
    const char *head, *below; /* below: NULL: the unit of the dimension */
    unit_dimension dimension;
    int width;
    column_owner owner;
    formatted_text (*cell)(const sheet *h, const carried_out_line *l);
} column;

static const column columns[] = {
    {"boil lost", "", DIM_COUNT, 9, OF_BOTH, cell_lost},         {"back", "after", DIM_COUNT, 8, OF_BOTH, cell_back},
    {"lowest", NULL, DIM_TEMPERATURE, 6, OF_LOADS, cell_lowest}, {"hot", "after", DIM_COUNT, 7, OF_LOADS, cell_hot},
    {"in/out", NULL, DIM_MASS, 6, OF_BOTH, cell_mass},           {"steam", "peak", DIM_COUNT, 6, OF_ADDITIONS, cell_steam},
    {"layer", NULL, DIM_MASS, 5, OF_ADDITIONS, cell_layer},      {"rise", NULL, DIM_LENGTH, 4, OF_ADDITIONS, cell_rise},
};

#define COLUMNS (sizeof columns / sizeof columns[0])

static bool is_used(const sheet *h, const column *c)
{
    const boil_history *r = &h->run->central;
    return c->owner == OF_BOTH || (c->owner == OF_LOADS ? r->loads_count > 0 : r->additions_count > 0);
}

static bool belongs(const column *c, const carried_out_line *l)
{
    return c->owner == OF_BOTH || (c->owner == OF_LOADS) == (l->load != NULL);
}

static void heads(const sheet *h)
{
    char upper[200], lower[200];
    int n = snprintf(upper, sizeof upper, " %8s  %-*s", "time", WORDS_WIDTH, "what");
    int m = snprintf(lower, sizeof lower, " %8s  %-*s", "", WORDS_WIDTH, "");
    for (size_t i = 0; i < COLUMNS; i++) {
        const column *c = &columns[i];
        if (!is_used(h, c))
            continue;
        const char *below = c->below != NULL ? c->below : format_unit(h->system, c->dimension);
        n += snprintf(upper + n, sizeof upper - (size_t)n, " %*s", c->width, c->head);
        m += snprintf(lower + m, sizeof lower - (size_t)m, " %*s", c->width, below);
    }
    text_line(h->to, upper);
    text_line(h->to, lower);
}

static void line_print(const sheet *h, const carried_out_line *l)
{
    char line[600];
    int n = snprintf(line, sizeof line, "%c%8s  %s", l->after_overflow ? '*' : ' ',
                     format_clock(h->run->scenario->start_s, l->time_s).text, text_fitted(l->words.text, WORDS_WIDTH).text);
    for (size_t i = 0; i < COLUMNS; i++) {
        const column *c = &columns[i];
        if (is_used(h, c))
            n += snprintf(line + n, sizeof line - (size_t)n, " %*s", c->width, belongs(c, l) ? c->cell(h, l).text : "");
    }
    text_line(h->to, line);
}

/* The worst among lines that are not shown one by one. */
typedef struct {
    size_t loads, additions, not_back;
    double slowest_s, slowest_at_s, steam_ratio, steam_at_s;
} rest;

static rest rest_of(const carried_out_line *lines, size_t count)
{
    rest r = {0};
    for (size_t i = 0; i < count; i++) {
        const carried_out_line *l = &lines[i];
        double recovery = l->load != NULL ? l->load->recovery_s : l->addition->recovery_s;
        double ratio = l->addition != NULL ? l->addition->steam_peak_kg_s / l->addition->steam_before_kg_s : 0;
        r.loads += l->load != NULL;
        r.additions += l->addition != NULL;
        r.not_back += isnan(recovery) ? 1 : 0;
        if (recovery > r.slowest_s) {
            r.slowest_s = recovery;
            r.slowest_at_s = l->time_s;
        }
        if (isfinite(ratio) && ratio > r.steam_ratio) {
            r.steam_ratio = ratio;
            r.steam_at_s = l->time_s;
        }
    }
    return r;
}

static void rest_print(const sheet *h, const carried_out_line *lines, size_t count)
{
    rest r = rest_of(lines, count);
    double start = h->run->scenario->start_s;
    fprintf(h->to, " ... and %s and %s more", format_count(r.loads, "load", "loads").text,
            format_count(r.additions, "addition", "additions").text);
    if (r.not_back > 0)
        fprintf(h->to, "; boil not back after %zu", r.not_back);
    else if (r.slowest_s > 0)
        fprintf(h->to, "; slowest back %s (%s)", format_duration(r.slowest_s).text, format_clock(start, r.slowest_at_s).text);
    if (r.steam_ratio > 0)
        fprintf(h->to, "; steam at most %s (%s)", format_ratio(r.steam_ratio).text, format_clock(start, r.steam_at_s).text);
    fputc('\n', h->to);
}

/* What waited and was not done. A run that stopped early leaves undone what it leaves. */
static void undone_print(const sheet *h)
{
    const scenario *s = h->run->scenario;
    for (size_t i = 0; i < s->schedule.count && !carried_out_stopped(h->run); i++)
        if (isnan(carried_out_done_s(h->run, i)))
            fprintf(h->to, " not done: %s, due at %s: %s\n", action_name_of(s, i).text,
                    format_clock(s->start_s, s->schedule.actions[i].time_s).text, carried_out_why_not(h->run, i));
}

void sheet_print(const carried_out *o, unit_system s, FILE *to)
{
    sheet h = {o, s, to};
    size_t count;
    bool marked = false, more = false;
    carried_out_line *lines = carried_out_lines(o, &count);
    if (count == 0) {
        fputs(" no loads and no additions\n", to);
        undone_print(&h);
        free(lines);
        return;
    }
    size_t shown_one_by_one = count <= SHEET_LINES_MAX ? count : SHEET_LINES_MAX - 1;
    heads(&h);
    for (size_t i = 0; i < shown_one_by_one; i++) {
        line_print(&h, &lines[i]);
        marked = marked || lines[i].after_overflow;
        more = more ||
               (lines[i].addition != NULL && lines[i].addition->steam_more_than && lines[i].addition->steam_before_kg_s > 0);
    }
    if (count > shown_one_by_one)
        rest_print(&h, lines + shown_one_by_one, count - shown_one_by_one);
    undone_print(&h);
    if (marked)
        fputs(" * after overflow: not a prediction\n", to);
    if (more)
        fputs(" > more than: so much steam throws the bath out\n", to);
    free(lines);
}
