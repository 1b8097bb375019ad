/* data.c -- all runs as JSON [RFC 8259] without a character of markup: a column is whole numbers, the first and then differences. */
#include <math.h>
#include <string.h>

#include "base/text.h"
#include "case/grading.h"
#include "replay/page/parts.h"
#include "describe/finding_words.h"
#include "describe/verdict.h"

typedef struct {
    const char *key;
    size_t where;
    double unit; /* of a whole number */
} column;

/* clang-format off */
static const column row_columns[] = {
    {"t", offsetof(boil_row, time_s), 0.01}, {"T", offsetof(boil_row, temperature_K), 0.01},
    {"b", offsetof(boil_row, boiling_point_K), 0.01}, {"s", offsetof(boil_row, steam_kg_s), 1e-5},
    {"g", offsetof(boil_row, layer_kg), 1e-3}, {"y", offsetof(boil_row, layer_m), 1e-5},
    {"h", offsetof(boil_row, still_level_m), 1e-4}, {"l", offsetof(boil_row, level_m), 1e-4},
    {"v", offsetof(boil_row, void_fraction), 1e-3}, {"c", offsetof(boil_row, coldest_load_K), 0.1},
    {"q", offsetof(boil_row, heater_W), 10}, {"u", offsetof(boil_row, undissolved_kg), 0.01},
    {"x", offsetof(boil_row, crystals_kg), 0.01}, {0}};
static const column band_columns[] = {
    {"t", offsetof(replay_band, time_s), 0.01}, {"lo", offsetof(replay_band, low_m), 1e-3},
    {"hi", offsetof(replay_band, high_m), 1e-3}, {"left", offsetof(replay_band, left_m), 1e-3}, {0}};
/* clang-format on */

/* What a browser could take for markup, or a line's end, is written by its number. */
static void quoted(FILE *to, const char *text)
{
    fputc('"', to);
    while (*text != '\0') {
        size_t length = text_character(text);
        if (html_forbids(text, length))
            fputs("\\ufffd", to);
        else if (length == 1 && strchr("<>&\"\\'", *text) != NULL)
            fprintf(to, "\\u%04x", (unsigned)*text);
        else
            fwrite(text, 1, length, to);
        text += length > 0 ? length : 1;
    }
    fputc('"', to);
}

static void named(FILE *to, const char *name, const char *text)
{
    fprintf(to, "\"%s\":", name);
    quoted(to, text);
    fputc(',', to);
}

static void number(FILE *to, const char *name, double value)
{
    if (isfinite(value))
        fprintf(to, "\"%s\":%.6g,", name, value);
    else
        fprintf(to, "\"%s\":null,", name);
}

static double value_at(const void *rows, size_t size, size_t i, size_t where)
{
    double value;
    memcpy(&value, (const char *)rows + i * size + where, sizeof value);
    return value;
}

static bool any(const void *rows, size_t count, size_t size, const column *c)
{
    for (size_t i = 0; i < count; i++)
        if (lround(value_at(rows, size, i, c->where) / c->unit) != 0)
            return true;
    return false;
}

/* A column of nothing but 0 is left out, but times. */
static void columns(FILE *to, const column *list, const void *rows, size_t count, size_t size)
{
    for (const column *c = list; c->key != NULL; c++) {
        long last = 0;
        if (c != list && !any(rows, count, size, c))
            continue;
        fprintf(to, "%s\n\"%s\":[", c == list ? "" : ",", c->key);
        for (size_t i = 0; i < count; i++) {
            long now = lround(value_at(rows, size, i, c->where) / c->unit);
            fprintf(to, "%s%ld", i > 0 ? "," : "", now - last);
            last = now;
        }
        fputc(']', to);
    }
}

static void modes(FILE *to, const replay *r)
{
    fputs(",\n\"m\":[", to);
    for (size_t i = 0; i < r->rows_count; i++)
        fprintf(to, "%s%d", i > 0 ? "," : "", (int)r->rows[i].boiling - (i > 0 ? (int)r->rows[i - 1].boiling : 0));
    fputs("]},\n\"band\":{", to);
}

static void spans_and_tide(FILE *to, const replay *r)
{
    fputs("},\n\"slow\":[", to);
    for (size_t i = 0; i < r->spans_count; i++)
        fprintf(to, "%s[%.2f,%.2f,%.3g]", i > 0 ? "," : "", r->spans[i].from_s, r->spans[i].to_s, r->spans[i].speed);
    fputs("],\n\"tide\":[", to);
    for (size_t i = 0; i < r->tide_count; i++)
        fprintf(to, "%s[%.2f,%.3f,%.3f]", i > 0 ? "," : "", r->tide[i].time_s, r->tide[i].likely_m, r->tide[i].possible_m);
    fputs("],\n\"events\":[", to);
    for (size_t i = 0; i < r->events_count; i++) {
        fprintf(to, "%s\n[%.2f,", i > 0 ? "," : "", r->events[i].time_s);
        quoted(to, r->events[i].text.text);
        fprintf(to, ",%d]", r->events[i].grave);
    }
    fputs("],\n\"loads\":[", to);
}

static void loads(FILE *to, const replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->loads_count; i++) {
        const boil_load_result *l = &h->loads[i];
        fprintf(to, "%s[%.2f,", i > 0 ? "," : "", l->time_s);
        fprintf(to, isnan(l->lifted_s) ? "null" : "%.2f", l->lifted_s);
        fprintf(to, ",%.1f,", r->of->scenario->schedule.actions[l->action].is.load.temperature_K);
        quoted(to, SHOWN(r->system, MASS, l->mass_kg));
        fputc(']', to);
    }
    fputs("],\n\"pours\":[", to);
}

static void pours(FILE *to, const replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        fprintf(to, "%s[%.2f,%.2f,\"%s\"]", i > 0 ? "," : "", a->time_s, a->time_s + a->over_s, lesson_poured(a->kind));
    }
    fputs("]}", to);
}

/* How sure it is that it comes over the rim, in the words of the findings. */
static const char *sure_of(const carried_out *o)
{
    for (size_t i = 0; i < o->found.count; i++)
        if (o->found.list[i].kind == BOIL_FOUND_OVERFLOW && finding_is_certain_in_band(&o->found.list[i]))
            return "certain in the band";
    return "likely";
}

static void tank(FILE *to, const replay *r)
{
    const boil_plant *p = &r->of->scenario->plant;
    number(to, "depth", p->tank.depth_m);
    number(to, "width", lesson_wide_m(&p->tank));
    number(to, "limit", p->limits.freeboard_m);
    number(to, "heap", lesson_heap_m_kg(r));
    number(to, "full", fmax(1, boil_heater_output(&p->heater, 1, r->of->central.summary.boiling_point_start_K)));
}

static void run(FILE *to, const lesson_answer *a, size_t index)
{
    const lesson_run *of = &a->runs[index];
    const replay *r = &of->replay;
    const carried_out *o = &of->done;
    fprintf(to, "%s\n{\"tank\":%zu,", index > 0 ? "," : "", index < a->count ? index : 0);
    named(to, "name", of->name);
    named(to, "title", of->title != NULL ? of->title : "");
    named(to, "outcome", lesson_outcome(a, of).text);
    named(to, "verdict", verdict_of(o, r->system).text);
    named(to, "sure", sure_of(o));
    tank(to, r);
    number(to, "end", o->central.end_s);
    number(to, "calm", r->calm_kg_s);
    number(to, "law", r->law_m);
    number(to, "over", o->central.summary.overflow_s);
    number(to, "later", lesson_later(a, of));
    fputs("\"rows\":{", to);
    columns(to, row_columns, r->rows, r->rows_count, sizeof *r->rows);
    modes(to, r);
    columns(to, band_columns, r->band, r->band_count, sizeof *r->band);
    spans_and_tide(to, r);
    loads(to, r);
    pours(to, r);
}

static void units(FILE *to)
{
    const column *const lists[] = {row_columns, band_columns + 1};
    fputs("\"units\":{\"m\":1", to);
    for (size_t i = 0; i < 2; i++)
        for (const column *c = lists[i]; c->key != NULL; c++)
            fprintf(to, ",\"%s\":%g", c->key, c->unit);
    fputs("},\n", to);
}

/* Where it stops and asks; each answer is a run of its own. */
static void stops(FILE *to, const lesson_answer *a)
{
    const lesson *l = a->of;
    fputs("\"stops\":[", to);
    for (size_t i = 0; l != NULL && i < l->stops_count; i++) {
        bool first = true;
        fprintf(to, "%s\n{\"at\":%.2f,", i > 0 ? "," : "", l->stops[i].at_s);
        named(to, "text", l->stops[i].asks);
        fputs("\"choices\":[", to);
        for (size_t k = 0; k < a->choices; k++) {
            if (l->choices[k].stop != i)
                continue;
            fprintf(to, "%s{", first ? "" : ",");
            named(to, "text", l->choices[k].says);
            fprintf(to, "\"run\":%zu}", a->count + k);
            first = false;
        }
        fputs("]}", to);
    }
    fputs("],\n", to);
}

static void said(FILE *to, const lesson *l)
{
    named(to, "hint", l != NULL && l->hint != NULL ? l->hint : "");
    named(to, "debrief", l != NULL && l->debrief != NULL ? l->debrief : "");
    named(to, "care", l != NULL && l->care != NULL ? l->care : "");
}

void lesson_data(const lesson_answer *a, FILE *to)
{
    lesson_view v = lesson_view_of(a);
    fprintf(to, "{\"us\":%s,\"start\":%.0f,\"end\":%.2f,", a->runs[0].replay.system == UNITS_US ? "true" : "false", a->start_s,
            lesson_end(a));
    fprintf(to, "\"view\":{\"top\":%.0f,\"unit\":%.3f},", v.top, v.unit);
    units(to);
    stops(to, a);
    said(to, a->of);
    fprintf(to, "\"shown\":[0%s],\n\"runs\":[", a->count > 1 ? ",1" : "");
    for (size_t i = 0; i < a->count + a->choices; i++)
        run(to, a, i);
    fputs("]}\n", to);
}
