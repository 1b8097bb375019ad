#include "commands/run/parts.h"

#include <math.h>

#define LABEL 11 /* columns before the frame */
#define WIDTH 66 /* columns of the picture */
#define TEMPERATURE_LINES 5
#define LEVEL_LINES 6

/* What falls into one column of the picture. NaN: no row of the trace does. */
typedef struct {
    double below_least_K, below_most_K; /* boiling point less temperature */
    double level_least_m, level_most_m;
    bool quiet;
} slice;

static size_t slice_of(const boil_history *h, double t)
{
    double x = t / h->end_s * WIDTH;
    return x >= WIDTH ? WIDTH - 1 : x > 0 ? (size_t)x : 0;
}

static void widen(double *least, double *most, double value)
{
    if (!(value >= *least))
        *least = value;
    if (!(value <= *most))
        *most = value;
}

static void add_row(slice *c, const boil_row *r)
{
    widen(&c->below_least_K, &c->below_most_K, fmax(0, r->boiling_point_K - r->temperature_K));
    widen(&c->level_least_m, &c->level_most_m, r->level_m);
    c->quiet = c->quiet || !r->boiling;
}

/* A short run has fewer rows than columns: an empty column is like the one before it. The highest level may lie between
   two rows. */
static void cut(const boil_history *h, slice slices[WIDTH])
{
    const double none = (double)NAN;
    for (size_t i = 0; i < WIDTH; i++)
        slices[i] = (slice){none, none, none, none, false};
    for (size_t i = 0; i < h->rows_count; i++)
        add_row(&slices[slice_of(h, h->rows[i].time_s)], &h->rows[i]);
    slice *highest = &slices[slice_of(h, h->summary.level_max_m.time_s)];
    widen(&highest->level_least_m, &highest->level_most_m, h->summary.level_max_m.value);
    for (size_t i = 1; i < WIDTH; i++)
        if (isnan(slices[i].below_most_K))
            slices[i] = slices[i - 1];
}

/* The line, counted from the top, of a value on a scale from `top` down to `bottom`. */
static int line_at(double value, double top, double bottom, int lines)
{
    double x = (top - value) / (top - bottom) * (lines - 1);
    return (int)fmin(fmax(round(x), 0), lines - 1);
}

static void frame(FILE *to, const char *label, const char picture[WIDTH + 1])
{
    char line[LABEL + WIDTH + sizeof(formatted_text)];
    snprintf(line, sizeof line, "%*s |%s", LABEL, label, picture);
    text_line(to, line);
}

static void temperature_line(FILE *to, const slice slices[WIDTH], int n, double most, const char *label)
{
    char line[WIDTH + 1] = "";
    for (size_t i = 0; i < WIDTH; i++) {
        int high = line_at(-slices[i].below_least_K, 0, -most, TEMPERATURE_LINES);
        int low = line_at(-slices[i].below_most_K, 0, -most, TEMPERATURE_LINES);
        bool there = !isnan(slices[i].below_most_K) && n >= high && n <= low;
        line[i] = there ? (slices[i].quiet ? 'q' : '-') : ' ';
    }
    frame(to, label, line);
}

static void temperature(FILE *to, const slice slices[WIDTH], unit_system s)
{
    double most = 1; /* K: a bath that hardly cools shall not look wild */
    for (size_t i = 0; i < WIDTH; i++)
        most = fmax(most, slices[i].below_most_K);
    fprintf(to, " %s below boiling (- boils, q quiet)\n", format_unit(s, DIM_DIFFERENCE));
    for (int n = 0; n < TEMPERATURE_LINES; n++) {
        bool labelled = n % 2 == 0;
        formatted_text label =
            labelled ? format_number(s, DIM_DIFFERENCE, most * n / (TEMPERATURE_LINES - 1)) : (formatted_text){""};
        temperature_line(to, slices, n, most, label.text);
    }
}

typedef struct {
    double top, bottom, rim; /* m */
    int rim_line;
} level_scale;

static level_scale scale_of(const slice slices[WIDTH], double rim)
{
    level_scale c = {.top = rim, .bottom = rim, .rim = rim};
    for (size_t i = 0; i < WIDTH; i++) {
        c.top = fmax(c.top, slices[i].level_most_m);
        c.bottom = fmin(c.bottom, slices[i].level_least_m);
    }
    c.bottom = fmin(c.bottom, c.top - 0.05); /* m, see above */
    c.rim_line = line_at(rim, c.top, c.bottom, LEVEL_LINES);
    return c;
}

static void level_line(FILE *to, const slice slices[WIDTH], int n, const level_scale *c, const char *label)
{
    char line[WIDTH + 1] = "";
    for (size_t i = 0; i < WIDTH; i++) {
        int high = line_at(slices[i].level_most_m, c->top, c->bottom, LEVEL_LINES);
        int low = line_at(slices[i].level_least_m, c->top, c->bottom, LEVEL_LINES);
        bool over = slices[i].level_most_m >= c->rim;
        if (!over && high <= c->rim_line) /* near the rim is not over it */
            high = c->rim_line + 1;
        if (low < high)
            low = high;
        bool there = !isnan(slices[i].level_most_m) && n >= high && n <= low;
        line[i] = there ? '#' : n == c->rim_line ? '=' : ' ';
    }
    frame(to, label, line);
}

static void level(FILE *to, const slice slices[WIDTH], double rim, unit_system s)
{
    level_scale c = scale_of(slices, rim);
    fprintf(to, " swelled level, %s (= rim)\n", format_unit(s, DIM_LENGTH));
    for (int n = 0; n < LEVEL_LINES; n++) {
        double here = n == c.rim_line ? rim : c.top - (c.top - c.bottom) * n / (LEVEL_LINES - 1);
        bool labelled = n == 0 || n == c.rim_line || n == LEVEL_LINES - 1;
        level_line(to, slices, n, &c, labelled ? format_number(s, DIM_LENGTH, here).text : "");
    }
}

static void axis(FILE *to, const carried_out *o)
{
    double start = o->scenario->start_s, end = o->central.end_s;
    fprintf(to, "%*s +", LABEL, "");
    for (int i = 0; i < WIDTH; i++)
        fputc(i % (WIDTH / 2) == 0 ? '+' : '-', to);
    fprintf(to, "\n%*s  %-*s%-*s%*s\n", LABEL, "", WIDTH / 2, format_clock(start, 0).text, WIDTH / 2 - 9,
            format_clock(start, end / 2).text, 9, format_clock(start, end).text);
}

void chart_print(const carried_out *o, unit_system s, FILE *to)
{
    slice slices[WIDTH];
    if (o->central.rows_count == 0 || !(o->central.end_s > 0))
        return;
    cut(&o->central, slices);
    temperature(to, slices, s);
    level(to, slices, o->scenario->plant.tank.depth_m, s);
    axis(to, o);
    double overflow = o->central.summary.overflow_s;
    if (!isnan(overflow))
        fprintf(to, " from %s on, after overflow: not a prediction\n", format_clock(o->scenario->start_s, overflow).text);
}
