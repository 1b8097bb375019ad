#include "commands/run/parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "actions/pour_hangs.h"
#include "acts/tap.h"
#include "describe/report.h"

#define FOLDED_LEAST 3 /* fewer are told one by one */

typedef struct {
    const carried_out *run;
    unit_system system;
    FILE *to;
} sheet;

/* Cells: what stands in a column for a line. A column of loads is blank for additions, and the other way round. */

typedef enum { KEPT, WAS_QUIET, LOST } boil_fate;

static boil_fate fate_of(const carried_out_line *l)
{
    double lost = l->load != NULL ? l->load->boil_lost_s : l->addition->boil_lost_s;
    bool was_quiet = l->load != NULL ? l->load->was_quiet : l->addition->was_quiet_before;
    return isnan(lost) ? KEPT : was_quiet ? WAS_QUIET : LOST;
}

static formatted_text cell_lost(const sheet *h, const carried_out_line *l)
{
    boil_fate fate = fate_of(l);
    if (fate == LOST)
        return carried_out_clock(h->run, l->load != NULL ? l->load->boil_lost_s : l->addition->boil_lost_s);
    return fate == KEPT ? (formatted_text){"kept"} : (formatted_text){"was quiet"};
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

typedef struct {
    const char *head, *below; /* below: NULL: the unit of the dimension */
    unit_dimension dimension;
    int width;
    formatted_text (*cell)(const sheet *h, const carried_out_line *l);
} column;

static const column of_loads[] = {
    {"boil lost", "", DIM_COUNT, 9, cell_lost},
    {"back", "after", DIM_COUNT, 8, cell_back},
    {"lowest", NULL, DIM_TEMPERATURE, 6, cell_lowest},
    {"hot", "after", DIM_COUNT, 7, cell_hot},
    {"out", NULL, DIM_MASS, 6, cell_mass},
};
static const column of_additions[] = {
    {"boil lost", "", DIM_COUNT, 9, cell_lost}, {"back", "after", DIM_COUNT, 8, cell_back},
    {"in", NULL, DIM_MASS, 5, cell_mass},       {"steam", "peak", DIM_COUNT, 6, cell_steam},
    {"layer", NULL, DIM_MASS, 5, cell_layer},   {"rise", NULL, DIM_LENGTH, 4, cell_rise},
};

/* Loads, or additions: a table each. */
typedef struct {
    const char *what;
    const column *columns;
    size_t columns_count;
    int words_width;
} table;

static const table tables[] = {{"loads", of_loads, sizeof of_loads / sizeof of_loads[0], 28},
                               {"additions", of_additions, sizeof of_additions / sizeof of_additions[0], 26}};

static void heads(const sheet *h, const table *t)
{
    char upper[200], lower[200];
    int n = snprintf(upper, sizeof upper, " %8s %-*s", "time", t->words_width, t->what);
    int m = snprintf(lower, sizeof lower, " %8s %-*s", "", t->words_width, "");
    for (size_t i = 0; i < t->columns_count; i++) {
        const column *c = &t->columns[i];
        const char *below = c->below != NULL ? c->below : format_unit(h->system, c->dimension);
        n += snprintf(upper + n, sizeof upper - (size_t)n, " %*s", c->width, c->head);
        m += snprintf(lower + m, sizeof lower - (size_t)m, " %*s", c->width, below);
    }
    text_line(h->to, upper);
    text_line(h->to, lower);
}

static void line_print(const sheet *h, const table *t, const carried_out_line *l)
{
    char line[600];
    int n = snprintf(line, sizeof line, "%c%8s %s", l->after_overflow ? '*' : ' ', carried_out_clock(h->run, l->time_s).text,
                     text_fitted(l->words.text, (size_t)t->words_width).text);
    for (size_t i = 0; i < t->columns_count; i++)
        n += snprintf(line + n, sizeof line - (size_t)n, " %*s", t->columns[i].width, t->columns[i].cell(h, l).text);
    text_line(h->to, line);
}

/* The worst among lines that are not shown one by one. */
typedef struct {
    size_t not_back;
    double slowest_s, slowest_at_s, steam_ratio, steam_at_s;
} rest;

static rest rest_of(const carried_out_line *lines, size_t count)
{
    rest r = {0};
    for (size_t i = 0; i < count; i++) {
        const carried_out_line *l = &lines[i];
        double recovery = l->load != NULL ? l->load->recovery_s : l->addition->recovery_s;
        double ratio = l->addition != NULL ? l->addition->steam_peak_kg_s / l->addition->steam_before_kg_s : 0;
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

static void rest_print(const sheet *h, const table *t, const carried_out_line *lines, size_t count)
{
    rest r = rest_of(lines, count);
    char text[300] = "";
    TEXT_ADD(text, "... and %zu %s more", count, t->what);
    if (r.not_back > 0)
        TEXT_ADD(text, "; boil not back after %zu", r.not_back);
    else if (r.slowest_s > 0)
        TEXT_ADD(text, "; slowest back %s (%s)", format_duration(r.slowest_s).text,
                 carried_out_clock(h->run, r.slowest_at_s).text);
    if (r.steam_ratio > 0)
        TEXT_ADD(text, "; steam at most %s (%s)", format_ratio(r.steam_ratio).text,
                 carried_out_clock(h->run, r.steam_at_s).text);
    report_paragraph(h->to, "%s", text);
}

/* "6:05 drain to the mark: ended 6:06, the gauge shows it" */
static void end_print(const sheet *h, const char *words, double time_s, double over_s, boil_pour_end end)
{
    char text[600];
    snprintf(text, sizeof text, "%s %s: ended %s, %s", carried_out_clock(h->run, time_s).text, words,
             carried_out_clock(h->run, time_s + over_s).text, pour_hangs_end_of(end));
    text_wrapped(h->to, text, 0, 1, REPORT_WIDTH);
}

/* All of it, in its own time, as if it had hung on nothing. */
static bool went_as_written(const boil_action *a, const boil_addition_result *r)
{
    const double told_apart_s = 1;
    return r->end == BOIL_POUR_ALL_IN && a->pour.goal == BOIL_GOAL_NONE && r->over_s < a->is.water.over_s + told_apart_s;
}

/* How a pour ended that hung on something. */
static void ended_print(const sheet *h, const carried_out_line *lines, size_t count)
{
    const boil_schedule *s = &h->run->scenario->schedule;
    for (size_t i = 0; i < count; i++) {
        const carried_out_line *l = &lines[i];
        const boil_action *a = &s->actions[l->action];
        if (l->addition != NULL && boil_tap_is_needed(&a->pour) && !went_as_written(a, l->addition))
            end_print(h, l->words.text, l->time_s, l->addition->over_s, l->addition->end);
    }
}

/* What was bailed and drained. */
static void taken_print(const sheet *h)
{
    const boil_history *r = &h->run->central;
    for (size_t i = 0; i < r->takes_count; i++) {
        const boil_take_result *t = &r->takes[i];
        char words[200];
        snprintf(words, sizeof words, "%.100s, %.30s at %.30s", action_name_of(h->run->scenario, t->action).text,
                 format_quantity(h->system, DIM_MASS, t->mass_kg).text,
                 format_quantity(h->system, DIM_TEMPERATURE, t->temperature_K).text);
        end_print(h, words, t->time_s, t->over_s, t->end);
    }
}

/* What waited and was not done. A run that stopped early leaves undone what it leaves. */
static void undone_print(const sheet *h)
{
    const scenario *s = h->run->scenario;
    for (size_t i = 0; i < s->schedule.count && !carried_out_stopped(h->run); i++) {
        char text[600];
        if (!isnan(carried_out_done_s(h->run, i)))
            continue;
        snprintf(text, sizeof text, "not done: %s, due at %s: %s", action_name_of(s, i).text,
                 format_clock_exact(s->start_s, s->schedule.actions[i].time_s).text, carried_out_why_not(h->run, i));
        text_wrapped(h->to, text, 0, 1, REPORT_WIDTH);
    }
}

/* Between equal lines the moment, and what is followed to the last digit, may differ a little. */
static bool varies(const column *c)
{
    return c->cell == cell_lost || c->cell == cell_back || c->cell == cell_lowest;
}

static double recovery_of(const carried_out_line *l)
{
    return l->load != NULL ? l->load->recovery_s : l->addition->recovery_s;
}

/* Two that went so much alike that one line tells both. */
static bool alike(const sheet *h, const table *t, const carried_out_line *a, const carried_out_line *b)
{
    double x = recovery_of(a), y = recovery_of(b);
    if (strcmp(a->words.text, b->words.text) != 0 || a->after_overflow != b->after_overflow || fate_of(a) != fate_of(b) ||
        isnan(x) != isnan(y) || fabs(x - y) > REPORT_SAME_S)
        return false;
    for (size_t i = 0; i < t->columns_count; i++)
        if (!varies(&t->columns[i]) && strcmp(t->columns[i].cell(h, a).text, t->columns[i].cell(h, b).text) != 0)
            return false;
    return true;
}

/* How many from the first on are alike and equally far apart. */
static size_t run_of(const sheet *h, const table *t, const carried_out_line *lines, size_t count)
{
    size_t n = 1;
    while (n < count && alike(h, t, &lines[0], &lines[n]) &&
           (n == 1 || fabs(lines[n].time_s - lines[n - 1].time_s - (lines[1].time_s - lines[0].time_s)) < REPORT_SAME_S))
        n++;
    return n >= FOLDED_LEAST ? n : 1;
}

/* The slowest of them is told. */
static void folded_print(const sheet *h, const table *t, const carried_out_line *lines, size_t count)
{
    const carried_out_line *worst = &lines[0];
    for (size_t i = 1; i < count; i++)
        if (lines[i].load != NULL && lines[i].load->recovery_s > worst->load->recovery_s)
            worst = &lines[i];
    line_print(h, t, worst);
    if (count == 1)
        return;
    fprintf(h->to, "%10s%zu like this, the worst is shown: %s to %s, every %s\n", "", count,
            carried_out_clock(h->run, lines[0].time_s).text, carried_out_clock(h->run, lines[count - 1].time_s).text,
            format_duration(lines[1].time_s - lines[0].time_s).text);
}

typedef struct {
    bool after_overflow, more_than;
} marks;

static marks table_print(const sheet *h, const table *t, const carried_out_line *lines, size_t count)
{
    marks m = {false, false};
    heads(h, t);
    size_t shown = 0, alike_ones;
    for (size_t i = 0; i < count; i += alike_ones) {
        if (++shown == SHEET_LINES_MAX && i + 1 < count) {
            rest_print(h, t, lines + i, count - i);
            break;
        }
        alike_ones = run_of(h, t, &lines[i], count - i);
        folded_print(h, t, &lines[i], alike_ones);
        m.after_overflow = m.after_overflow || lines[i].after_overflow;
        m.more_than = m.more_than || (lines[i].addition != NULL && lines[i].addition->steam_more_than &&
                                      lines[i].addition->steam_before_kg_s > 0);
    }
    return m;
}

/* Of one table alone, to be freed. */
static carried_out_line *lines_of(const carried_out *o, bool loads, size_t *count)
{
    size_t all;
    carried_out_line *lines = carried_out_lines(o, &all);
    *count = 0;
    for (size_t i = 0; i < all; i++)
        if ((lines[i].load != NULL) == loads)
            lines[(*count)++] = lines[i];
    return lines;
}

static void breaks_print(const sheet *h)
{
    const scenario *s = h->run->scenario;
    for (size_t i = 0; i < s->schedule.breaks_count; i++) {
        const char *words = s->wording.breaks[i].text;
        report_paragraph(h->to, "break: %s%s%s", scenario_break_time(s, i).text, words[0] != '\0' ? ", " : "",
                         text_plain(words).text);
    }
}

void sheet_print(const carried_out *o, unit_system s, FILE *to)
{
    sheet h = {o, s, to};
    size_t counts[2];
    marks all = {false, false};
    for (int i = 0; i < 2; i++) {
        carried_out_line *lines = lines_of(o, i == 0, &counts[i]);
        marks m = counts[i] > 0 ? table_print(&h, &tables[i], lines, counts[i]) : (marks){false, false};
        ended_print(&h, lines, counts[i] < SHEET_LINES_MAX ? counts[i] : SHEET_LINES_MAX);
        all = (marks){all.after_overflow || m.after_overflow, all.more_than || m.more_than};
        free(lines);
    }
    if (counts[0] + counts[1] == 0)
        fputs(" no loads and no additions\n", to);
    taken_print(&h);
    undone_print(&h);
    breaks_print(&h);
    if (all.after_overflow)
        fputs(" * after overflow: not a prediction\n", to);
    if (all.more_than)
        fputs(" > more than: so much steam throws the bath out\n", to);
}
