#include "commands/run/parts.h"

#include <math.h>
#include <string.h>

#define LABEL 10 /* columns before the frame */

/* What falls into one column of the picture. NaN: no row of the trace does. */
typedef struct {
    double boils_least_K, boils_most_K;
    double level_m; /* the highest */
} slice;

typedef struct {
    const carried_out *o;
    unit_system system;
    slice slices[CHART_COLUMNS];
    FILE *to;
} chart;

static size_t column_of(const carried_out *o, double t)
{
    double x = t / o->central.end_s * CHART_COLUMNS;
    return x >= CHART_COLUMNS ? CHART_COLUMNS - 1 : x > 0 ? (size_t)x : 0;
}

/* A short run has fewer rows than columns: an empty column is like the one before it. The highest level may lie between
   two rows. */
static void cut(chart *c, const boil_history *h)
{
    const double none = (double)NAN;
    for (size_t i = 0; i < CHART_COLUMNS; i++)
        c->slices[i] = (slice){none, none, none};
    for (size_t i = 0; i < h->rows_count; i++) {
        const boil_row *r = &h->rows[i];
        slice *s = &c->slices[column_of(c->o, r->time_s)];
        *s = (slice){fmin(s->boils_least_K, r->boiling_point_K), fmax(s->boils_most_K, r->boiling_point_K),
                     fmax(s->level_m, r->level_m)};
    }
    const boil_extreme *most = &c->o->central.summary.level_max_m;
    slice *highest = &c->slices[column_of(c->o, most->time_s)];
    highest->level_m = fmax(highest->level_m, most->value);
    for (size_t i = 1; i < CHART_COLUMNS; i++)
        if (isnan(c->slices[i].boils_most_K))
            c->slices[i] = (slice){c->slices[i - 1].boils_least_K, c->slices[i - 1].boils_most_K,
                                   fmax(c->slices[i].level_m, c->slices[i - 1].level_m)};
}

static void frame(const chart *c, const char *label, const char picture[CHART_COLUMNS + 1])
{
    char line[LABEL + CHART_COLUMNS + sizeof(formatted_text)];
    snprintf(line, sizeof line, "%*s |%s", LABEL, label, picture);
    text_line(c->to, line);
}

/* A scale from the top line down to the bottom one. */
typedef struct {
    double top, bottom;
    int lines;
} scale;

static int line_at(const scale *s, double value)
{
    double x = (s->top - value) / (s->top - s->bottom) * (s->lines - 1);
    return (int)fmin(fmax(round(x), 0), s->lines - 1);
}

static double value_at(const scale *s, int line)
{
    return s->top - (s->top - s->bottom) * line / (s->lines - 1);
}

/* The ends of the band keep their own line, wherever the data reach. */
static void boils_line(const chart *c, const scale *s, int n)
{
    const boil_limits *l = &c->o->scenario->plant.limits;
    int high = line_at(s, l->boiling_point_high_K), low = line_at(s, l->boiling_point_low_K);
    bool edge = n == high || n == low, labelled = edge || n == 0 || n == s->lines - 1;
    double here = n == high ? l->boiling_point_high_K : n == low ? l->boiling_point_low_K : value_at(s, n);
    char line[CHART_COLUMNS + 1] = "";
    for (size_t i = 0; i < CHART_COLUMNS; i++) {
        bool there = !isnan(c->slices[i].boils_most_K) && n >= line_at(s, c->slices[i].boils_most_K) &&
                     n <= line_at(s, c->slices[i].boils_least_K);
        line[i] = there ? '*' : edge ? '.' : ' ';
    }
    frame(c, labelled ? format_bare(c->system, DIM_TEMPERATURE, here).text : "", line);
}

static void boils(const chart *c, int lines)
{
    const boil_limits *l = &c->o->scenario->plant.limits;
    scale s = {l->boiling_point_high_K, l->boiling_point_low_K, lines};
    for (size_t i = 0; i < CHART_COLUMNS; i++) {
        s.top = fmax(s.top, c->slices[i].boils_most_K);
        s.bottom = fmin(s.bottom, c->slices[i].boils_least_K);
    }
    fprintf(c->to, " boils at, %s (. band)\n", format_unit(c->system, DIM_TEMPERATURE));
    for (int n = 0; n < lines; n++)
        boils_line(c, &s, n);
}

/* A surface near the rim is not over it, and one over it is. */
static int surface_at(const scale *s, double level_m, double rim_m)
{
    int rim = line_at(s, rim_m), here = line_at(s, level_m);
    if (level_m < rim_m && here <= rim)
        return rim + 1;
    return level_m >= rim_m && here > rim ? rim : here;
}

static void level_line(const chart *c, const scale *s, int n)
{
    double rim_m = c->o->scenario->plant.tank.depth_m;
    int rim = line_at(s, rim_m), still = line_at(s, c->o->central.summary.still_level_start_m);
    bool labelled = n == 0 || n == rim || n == s->lines - 1;
    char line[CHART_COLUMNS + 1] = "";
    for (size_t i = 0; i < CHART_COLUMNS; i++) {
        double level_m = c->slices[i].level_m;
        bool there = !isnan(level_m) && n == surface_at(s, level_m, rim_m);
        line[i] = there ? '#' : n == rim ? '=' : n == still ? '.' : ' ';
    }
    frame(c, labelled ? format_number(c->system, DIM_LENGTH, n == rim ? rim_m : value_at(s, n)).text : "", line);
}

static void level(const chart *c, int lines)
{
    const boil_summary *b = &c->o->central.summary;
    double rim_m = c->o->scenario->plant.tank.depth_m, lowest_m = fmin(b->still_level_start_m, b->still_level_end_m);
    scale s = {fmax(rim_m, b->level_max_m.value), fmin(lowest_m, fmin(b->still_level_min_m.value, rim_m - 0.05)), lines};
    fprintf(c->to, " swelled level, %s (= rim, . still at the start)\n", format_unit(c->system, DIM_LENGTH));
    for (int n = 0; n < lines; n++)
        level_line(c, &s, n);
}

/* A letter from one moment to another. */
static void mark(const chart *c, char row[CHART_COLUMNS + 1], char letter, double from_s, double to_s)
{
    double end_s = c->o->central.end_s, until_s = isnan(to_s) ? end_s : to_s;
    if (!(from_s <= end_s))
        return;
    for (size_t i = column_of(c->o, from_s); i <= column_of(c->o, until_s); i++)
        if (i == column_of(c->o, from_s) || (double)i / CHART_COLUMNS * end_s < until_s) /* what ends where a column begins */
            row[i] = letter;
}

static void blank(char row[CHART_COLUMNS + 1], char with)
{
    memset(row, with, CHART_COLUMNS);
    row[CHART_COLUMNS] = '\0';
}

static void quiet(const chart *c)
{
    char row[CHART_COLUMNS + 1];
    blank(row, '-');
    for (size_t i = 0; i < c->o->central.quiet_count; i++)
        mark(c, row, 'q', c->o->central.quiet[i].start_s, c->o->central.quiet[i].end_s);
    frame(c, "boil", row);
}

/* Into the tank or out of it. */
static bool any_poured(const boil_history *h)
{
    return h->valve_count + h->additions_count + h->takes_count > 0;
}

static void poured(const chart *c)
{
    static const char letters[] = {[BOIL_ACTION_WATER] = 'w', [BOIL_ACTION_SALTS] = 's', [BOIL_ACTION_LIQUID] = 'l'};
    const boil_history *h = &c->o->central;
    char row[CHART_COLUMNS + 1];
    blank(row, ' ');
    for (size_t i = 0; i < h->valve_count; i += 2)
        mark(c, row, 'v', h->valve_s[i], i + 1 < h->valve_count ? h->valve_s[i + 1] : (double)NAN);
    for (size_t i = 0; i < h->additions_count; i++)
        mark(c, row, letters[h->additions[i].kind], h->additions[i].time_s, h->additions[i].time_s + h->additions[i].over_s);
    for (size_t i = 0; i < h->takes_count; i++)
        mark(c, row, 'b', h->takes[i].time_s, h->takes[i].time_s + h->takes[i].over_s);
    if (any_poured(h))
        frame(c, "poured", row);
}

static void loads(const chart *c)
{
    const boil_history *h = &c->o->central;
    char row[CHART_COLUMNS + 1];
    blank(row, ' ');
    for (size_t i = 0; i < h->loads_count; i++) {
        char *at = &row[column_of(c->o, h->loads[i].time_s)];
        *at = *at == ' ' ? 'L' : *at == 'L' ? '2' : *at < '9' ? (char)(*at + 1) : '+';
    }
    if (h->loads_count > 0)
        frame(c, "loads", row);
}

static void axis(const chart *c, double worst_s)
{
    char row[CHART_COLUMNS + 1];
    blank(row, '-');
    row[CHART_COLUMNS / 2] = row[CHART_COLUMNS - 1] = '+';
    if (!isnan(worst_s) && worst_s <= c->o->central.end_s)
        row[column_of(c->o, worst_s)] = '^';
    fprintf(c->to, "%*s +%s\n", LABEL, "", row);
    double end_s = c->o->central.end_s;
    fprintf(c->to, "%*s  %-*s%-*s%*s\n", LABEL, "", CHART_COLUMNS / 2, carried_out_clock(c->o, 0).text, CHART_COLUMNS / 2 - 12,
            carried_out_clock(c->o, end_s / 2).text, 12, carried_out_clock(c->o, end_s).text);
}

int chart_lines(const carried_out *o, int boils_lines, int level_lines)
{
    const boil_history *h = &o->central;
    if (!(h->end_s > 0))
        return 0;
    return 2 + boils_lines + level_lines + 1 + any_poured(h) + (h->loads_count > 0) + 2;
}

void chart_print(const carried_out *o, const boil_history *trace, const chart_form *form, FILE *to)
{
    chart c = {.o = o, .system = form->system, .to = to};
    if (!(o->central.end_s > 0))
        return;
    cut(&c, trace);
    boils(&c, form->boils_lines);
    level(&c, form->level_lines);
    quiet(&c);
    poured(&c);
    loads(&c);
    axis(&c, form->worst_s);
}
