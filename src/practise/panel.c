#include "practise/panel.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "analysis/trace.h"

#define MOST_RATIO 100.0
#define LEAST_STEAM 0.005 /* of the usual */

/* clang-format off */
static const size_t between[] = {
    offsetof(boil_row, temperature_K), offsetof(boil_row, boiling_point_K), offsetof(boil_row, salt_fraction),
    offsetof(boil_row, steam_kg_s), offsetof(boil_row, heater_W), offsetof(boil_row, layer_kg),
    offsetof(boil_row, level_m), offsetof(boil_row, freeboard_m),
    offsetof(boil_row, void_fraction), offsetof(boil_row, left_m), offsetof(boil_row, calm_kg_s),
    offsetof(boil_row, crystals_kg), offsetof(boil_row, undissolved_kg), offsetof(boil_row, coldest_load_K),
};
/* clang-format on */

/* The last row at or before the moment: what is yes or no holds from there. */
static const boil_row *row_before(const boil_history *h, double time_s)
{
    size_t low = 0, high = h->rows_count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (h->rows[middle].time_s <= time_s)
            low = middle;
        else
            high = middle;
    }
    return &h->rows[low];
}

static void count_loads(panel *p, const shift *s, const boil_history *h, double time_s)
{
    for (size_t i = 0; i < h->loads_count; i++) {
        const boil_load_result *l = &h->loads[i];
        const boil_load *load = &s->scenario->schedule.actions[l->action].is.load;
        if (l->time_s > time_s || l->lifted_s + load->lowering_s <= time_s)
            continue;
        p->loads++;
        p->loads_kg += l->mass_kg;
    }
}

panel panel_of(const shift *s, const boil_history *h, double time_s)
{
    const boil_plant *plant = &s->scenario->plant;
    panel p = {.row = *row_before(h, time_s), .limit_m = plant->limits.freeboard_m};
    for (size_t i = 0; i < sizeof between / sizeof between[0]; i++) {
        double value = boil_trace_at(h, between[i], time_s);
        memcpy((char *)&p.row + between[i], &value, sizeof value);
    }
    p.row.time_s = time_s;
    double full_W = boil_heater_output(&plant->heater, 1, p.row.temperature_K);
    p.heat = full_W > 0 ? p.row.heater_W / full_W : 0;
    p.bed_kg = p.row.undissolved_kg + p.row.crystals_kg;
    count_loads(&p, s, h, time_s);
    return p;
}

formatted_text panel_steam(const panel *p)
{
    formatted_text t;
    double ratio = p->row.steam_kg_s / p->row.calm_kg_s;
    if (!(p->row.steam_kg_s > LEAST_STEAM * p->row.calm_kg_s) || !(p->row.calm_kg_s > 0))
        snprintf(t.text, sizeof t.text, p->row.steam_kg_s > 0 && !(p->row.calm_kg_s > 0) ? "some" : "none from boiling");
    else if (ratio > MOST_RATIO)
        snprintf(t.text, sizeof t.text, "over x%.0f of usual", MOST_RATIO);
    else
        snprintf(t.text, sizeof t.text, "x%.*f of usual", ratio < 9.95 ? 1 : 0, ratio);
    return t;
}

formatted_text panel_lets_go(const panel *p, unit_system u)
{
    formatted_text t = {""};
    if (p->row.layer_kg < PANEL_LEAST_KG || isnan(p->row.left_m))
        return t;
    if (p->row.left_m <= 0)
        snprintf(t.text, sizeof t.text, "OVER");
    else
        t = format_quantity(u, DIM_LENGTH, p->row.left_m);
    return t;
}

static void add_rim(const panel *p, unit_system u, panel_line *t)
{
    formatted_text lets_go = panel_lets_go(p, u);
    if (p->row.freeboard_m <= 0)
        TEXT_ADD(t->text, "OVER THE RIM");
    else
        TEXT_ADD(t->text, "%s to the rim (limit %s)", SHOWN(u, LENGTH, p->row.freeboard_m),
                 format_number(u, DIM_LENGTH, p->limit_m).text);
    if (lets_go.text[0] != '\0')
        TEXT_ADD(t->text, ", if it lets go now %s", lets_go.text);
}

panel_line panel_line_of(const panel *p, unit_system u)
{
    panel_line t = {""};
    const boil_row *r = &p->row;
    double below_K = r->boiling_point_K - r->temperature_K;
    TEXT_ADD(t.text, "%s", r->boiling ? "boils" : "QUIET");
    if (!r->boiling)
        TEXT_ADD(t.text, " %s below boiling", SHOWN(u, DIFFERENCE, fmax(below_K, 0)));
    TEXT_ADD(t.text, " at %s; ", SHOWN(u, TEMPERATURE, r->temperature_K));
    add_rim(p, u, &t);
    TEXT_ADD(t.text, "; steam %s; ", panel_steam(p).text);
    if (r->layer_kg >= PANEL_LEAST_KG)
        TEXT_ADD(t.text, "%s water floats; ", SHOWN(u, MASS, r->layer_kg));
    TEXT_ADD(t.text, "salts %s; heat %.0f %%", SHOWN(u, FRACTION, r->salt_fraction), 100 * p->heat);
    if (p->bed_kg >= PANEL_LEAST_KG)
        TEXT_ADD(t.text, "; %s salt not dissolved", SHOWN(u, MASS, p->bed_kg));
    if (p->loads > 0)
        TEXT_ADD(t.text, "; %s in, %s, coldest %s", format_count(p->loads, "load", "loads").text, SHOWN(u, MASS, p->loads_kg),
                 SHOWN(u, TEMPERATURE, r->coldest_load_K));
    return t;
}
