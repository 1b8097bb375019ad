#include "pictures/picture_frame.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "describe/trace.h"

/* Of a line of text, as much as the panel of the actions takes. */
static const double panel_share = 0.82;

/* So many bars side by side are as many as a picture has columns of dots. */
#define APART 1000

static double end_of(const carried_out *o, const carried_out_line *l)
{
    double end = o->central.end_s;
    if (l->addition != NULL)
        return fmin(l->time_s + l->addition->over_s, end);
    return isnan(l->load->lifted_s) ? end : l->load->lifted_s;
}

static action_lane lane_of(const carried_out *o, size_t action)
{
    return action_type_of(o->scenario->schedule.actions[action].kind)->lane;
}

/* These have no result of their own, nor has a lift: it shows as the end of its load. */
static size_t add_switched(const carried_out *o, bar *bars, size_t count)
{
    const boil_schedule *s = &o->scenario->schedule;
    for (size_t i = 0; i < s->count; i++) {
        double done_s = carried_out_done_s(o, i);
        if (lane_of(o, i) == ACTION_LANE_SET && !isnan(done_s))
            bars[count++] =
                (bar){.kind = ACTION_LANE_SET, .from_s = done_s, .to_s = done_s, .words = action_name_of(o->scenario, i)};
    }
    return count;
}

/* A load takes the first lane that is free. */
static void take_lanes(bar *bars, size_t count)
{
    double free_from[BAR_LANES_MAX] = {0};
    for (size_t i = 0; i < count; i++) {
        if (bars[i].kind != ACTION_LANE_LOADS)
            continue;
        size_t lane = 0;
        while (lane + 1 < BAR_LANES_MAX && free_from[lane] > bars[i].from_s)
            lane++;
        free_from[lane] = fmax(free_from[lane], bars[i].to_s);
        bars[i].lane = lane;
    }
}

static double next_in_lane(const bar *bars, size_t count, size_t i, double end)
{
    for (size_t n = i + 1; n < count; n++)
        if (bars[n].kind == bars[i].kind && bars[n].lane == bars[i].lane)
            return bars[n].from_s;
    return end;
}

/* The lane says that it is a load. The first two words are the amount. */
static void shorten(action_name *words, size_t capacity)
{
    char *text = words->text;
    const char *whole = action_name_of_load(words);
    memmove(text, whole, strlen(whole) + 1);
    if (text_characters(text, text + strlen(text)) <= capacity)
        return;
    char *blank = strchr(text, ' ');
    blank = blank != NULL ? strchr(blank + 1, ' ') : NULL;
    if (blank != NULL)
        *blank = '\0';
    if (text_characters(text, text + strlen(text)) > capacity)
        text[0] = '\0';
}

/* In a shared lane the next bar may begin earlier. */
static size_t room_before(double from, double to, double end, size_t columns)
{
    double capacity = (to - from) / end * (double)columns - 1;
    return capacity > 0 ? (size_t)capacity : 0;
}

/* Bars that begin closer together than can be told apart are one. */
static size_t merge(bar *bars, size_t count, double apart_s)
{
    size_t last[ACTION_LANES][BAR_LANES_MAX] = {{0}}, kept = 0;
    for (size_t i = 0; i < count; i++) {
        size_t *at = &last[bars[i].kind][bars[i].lane];
        bar *before = *at > 0 ? &bars[*at - 1] : NULL;
        if (before != NULL && bars[i].from_s - before->to_s < apart_s && bars[i].to_s - before->from_s < apart_s) {
            before->to_s = fmax(before->to_s, bars[i].to_s);
            if (bars[i].words.text[0] != '\0')
                before->words = bars[i].words;
            continue;
        }
        bars[kept] = bars[i];
        *at = ++kept;
    }
    return kept;
}

bar *picture_bars(const carried_out *o, size_t columns, size_t *count)
{
    size_t lines_count;
    carried_out_line *lines = carried_out_lines(o, &lines_count);
    bar *bars = memory_needed(malloc((lines_count + o->scenario->schedule.count + 1) * sizeof *bars));
    *count = 0;
    for (size_t i = 0; bars != NULL && i < lines_count; i++) {
        const carried_out_line *l = &lines[i];
        bars[(*count)++] = (bar){.kind = lane_of(o, l->action), .from_s = l->time_s, .to_s = end_of(o, l), .words = l->words};
    }
    free(lines);
    if (bars == NULL)
        return NULL;
    *count = add_switched(o, bars, *count);
    take_lanes(bars, *count);
    double end = o->central.end_s;
    for (size_t i = 0; i < *count; i++)
        shorten(&bars[i].words, room_before(bars[i].from_s, next_in_lane(bars, *count, i, end), end, columns));
    *count = merge(bars, *count, end / APART);
    return bars;
}

/* How many each kind takes. */
static void lanes_of(const picture_run *r, size_t lanes[ACTION_LANES])
{
    for (int k = 0; k < ACTION_LANES; k++)
        lanes[k] = 0;
    for (size_t i = 0; i < r->bars_count; i++)
        if (r->bars[i].lane + 1 > lanes[r->bars[i].kind])
            lanes[r->bars[i].kind] = r->bars[i].lane + 1;
}

void picture_lanes(const void *run, FILE *to)
{
    static const char *const names[ACTION_LANES] = {"loads", "water", "salts", "liquid", "set to"}; /* by action_lane */
    size_t lanes[ACTION_LANES], lane = 0;
    lanes_of(run, lanes);
    for (int k = 0; k < ACTION_LANES; k++)
        for (size_t i = 0; i < lanes[k]; i++)
            fprintf(to, "%zu\tx%s\n", ++lane, i == 0 ? names[k] : "");
}

void picture_actions(const void *run, FILE *to)
{
    const picture_run *r = run;
    size_t lanes[ACTION_LANES], above[ACTION_LANES] = {0};
    lanes_of(r, lanes);
    for (int k = 1; k < ACTION_LANES; k++)
        above[k] = above[k - 1] + lanes[k - 1];
    for (size_t i = 0; i < r->bars_count; i++) {
        const bar *b = &r->bars[i];
        fprintf(to, "%zu\t%.9g\t%.9g\t%d\t", above[b->kind] + b->lane + 1, b->from_s, b->to_s, (int)b->kind);
        picture_text(to, b->words.text);
        fputc('\n', to);
    }
}

bool picture_run_begin(picture_run *r, const carried_out *o, unit_system s, picture_format format, double end_s)
{
    boil_run_options run = boil_run_options_default();
    double share = panel_share * o->central.end_s / end_s;
    *r = (picture_run){.of = o, .system = s, .format = format};
    run.tolerance = o->tolerance;
    if (!memory_good(trace_of(o->scenario, &run, &r->trace)))
        return false;
    r->bars = picture_bars(o, (size_t)(share * (double)picture_columns(format)), &r->bars_count);
    return true;
}

void picture_run_end(picture_run *r)
{
    boil_history_free(&r->trace);
    free(r->bars);
}
