#include "describe/trace.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "describe/trace_thin.h"

static const double finest_s = 1, rows_most = 86400;

/* As many as a picture has columns, twice. */
#define DRAWN ((size_t)2000)

int trace_of(const scenario *s, const boil_run_options *options, boil_history *out)
{
    boil_run_options fine = *options;
    fine.row_interval_s = fmax(finest_s, s->schedule.duration_s / rows_most);
    int result = boil_run(&s->plant, &s->schedule, &fine, out);
    if (result == 0)
        out->rows_count = trace_thinned(out->rows, out->rows_count, DRAWN);
    return result;
}

/* As CSV ---------------------------------------------------------------------------------------------------------- */

typedef enum { OF_NUMBER, OF_BOOL } column_kind;

typedef struct {
    const char *name;
    column_kind kind;
    size_t where;
} column;

/* clang-format off */
#define NUMBER(field) {#field, OF_NUMBER, offsetof(boil_row, field)}
/* clang-format on */
/* clang-format off */
#define BOOL(field) {#field, OF_BOOL, offsetof(boil_row, field)}
/* clang-format on */

static const column columns[] = {
    NUMBER(time_s),         BOOL(boiling),           NUMBER(temperature_K), NUMBER(boiling_point_K), NUMBER(salt_fraction),
    NUMBER(water_kg),       NUMBER(naoh_kg),         NUMBER(nano3_kg),      NUMBER(nano2_kg),        NUMBER(steam_kg_s),
    NUMBER(vented_kg_s),    NUMBER(evaporated_kg_s), NUMBER(heater_W),      NUMBER(wall_W),          NUMBER(surface_W),
    NUMBER(loads_W),        NUMBER(layer_kg),        NUMBER(layer_m),       NUMBER(layer_K),         BOOL(layer_boiling),
    NUMBER(still_level_m),  NUMBER(level_m),         NUMBER(level_lower_m), NUMBER(freeboard_m),     NUMBER(void_fraction),
    NUMBER(coldest_load_K), NUMBER(undissolved_kg),  BOOL(valve_open),      NUMBER(sensor_K),
};

#define COLUMNS (sizeof columns / sizeof columns[0])

/* What is not there is an empty field. */
static void field(const boil_row *r, const column *c, FILE *to)
{
    const char *at = (const char *)r + c->where;
    if (c->kind == OF_BOOL) {
        fputc(*(const bool *)at ? '1' : '0', to);
        return;
    }
    double x = *(const double *)(const void *)at;
    if (isfinite(x))
        fprintf(to, "%.9g", x == 0 ? 0.0 : x);
}

void trace_csv(const boil_history *h, FILE *to)
{
    for (size_t i = 0; i < COLUMNS; i++)
        fprintf(to, "%s%s", i > 0 ? "," : "", columns[i].name);
    fputc('\n', to);
    for (size_t n = 0; n < h->rows_count; n++) {
        for (size_t i = 0; i < COLUMNS; i++) {
            if (i > 0)
                fputc(',', to);
            field(&h->rows[n], &columns[i], to);
        }
        fputc('\n', to);
    }
}
