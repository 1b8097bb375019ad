/* support/same_history.h -- two histories that are the same to the last bit. */
#ifndef SUPPORT_SAME_HISTORY_H
#define SUPPORT_SAME_HISTORY_H

#include "support/close.h"

#include "boilback.h"

/* NaN is itself, and the sign of zero counts: bits. */
static inline void assert_same(const void *a, const void *b, size_t size)
{
    assert_memory_equal(a, b, size);
}
#define SAME(a, b, field) assert_same(&(a)->field, &(b)->field, sizeof(a)->field)

static inline void assert_same_lists(const boil_history *a, const boil_history *b)
{
    for (size_t i = 0; i < a->rows_count; i++) {
        const boil_row *p = &a->rows[i], *q = &b->rows[i];
        SAME(p, q, time_s), SAME(p, q, temperature_K), SAME(p, q, boiling_point_K), SAME(p, q, water_kg);
        SAME(p, q, naoh_kg), SAME(p, q, steam_kg_s), SAME(p, q, vented_kg_s), SAME(p, q, heater_W), SAME(p, q, loads_W);
        SAME(p, q, layer_kg), SAME(p, q, layer_K), SAME(p, q, undissolved_kg), SAME(p, q, level_m), SAME(p, q, sensor_K);
        SAME(p, q, valve_open), SAME(p, q, coldest_load_K);
    }
    for (size_t i = 0; i < a->acts_count; i++)
        SAME(&a->acts[i], &b->acts[i], done_s), SAME(&a->acts[i], &b->acts[i], end);
    for (size_t i = 0; i < a->loads_count; i++) {
        const boil_load_result *p = &a->loads[i], *q = &b->loads[i];
        SAME(p, q, boil_lost_s), SAME(p, q, recovery_s), SAME(p, q, lowest_temperature_K), SAME(p, q, hot_s);
        SAME(p, q, lifted_s), SAME(p, q, drag_out_kg), SAME(p, q, level_max_m);
    }
    for (size_t i = 0; i < a->additions_count; i++) {
        const boil_addition_result *p = &a->additions[i], *q = &b->additions[i];
        SAME(p, q, kind), SAME(p, q, time_s), SAME(p, q, mass_kg), SAME(p, q, quiet_poured_kg), SAME(p, q, steam_peak_kg_s);
        SAME(p, q, recovery_s), SAME(p, q, layer_peak_kg), SAME(p, q, freeboard_min_m), SAME(p, q, level_rise_m);
    }
    for (size_t i = 0; i < a->quiet_count; i++) {
        const boil_quiet_result *p = &a->quiet[i], *q = &b->quiet[i];
        SAME(p, q, start_s), SAME(p, q, end_s), SAME(p, q, lowest_temperature_K), SAME(p, q, cause), SAME(p, q, layer_max_m);
        SAME(p, q, layer_max_kg);
    }
    for (size_t i = 0; i < a->takes_count; i++)
        SAME(&a->takes[i], &b->takes[i], mass_kg), SAME(&a->takes[i], &b->takes[i], over_s);
    assert_same(a->valve_s, b->valve_s, a->valve_count * sizeof *a->valve_s);
}

static inline void assert_same_history(const boil_history *a, const boil_history *b)
{
    SAME(a, b, end), SAME(a, b, end_s), SAME(a, b, steps), SAME(a, b, evaluations), SAME(a, b, mode_changes);
    SAME(a, b, summary), SAME(a, b, balance);
    SAME(a, b, rows_count), SAME(a, b, acts_count), SAME(a, b, loads_count), SAME(a, b, additions_count),
        SAME(a, b, quiet_count);
    SAME(a, b, valve_count);
    assert_same_lists(a, b);
}

#undef SAME

#endif
