#include "random/figures.h"

#include <math.h>
#include <stddef.h>

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

typedef enum { TIMES, KELVINS, MASSES, LEVELS, HEATS, SHARES, STRENGTHS, SIZES } size_of;

typedef struct {
    const char *name;
    size_t where;
    size_of size;
} figure;

#define S(member, size)                                                                                                        \
    {                                                                                                                          \
#member, offsetof(boil_summary, member), size                                                                          \
    }
/* clang-format off */
static const figure of_summary[] = {
    S(temperature_end_K, KELVINS), S(boiling_point_end_K, KELVINS), S(salt_fraction_end, SHARES),
    S(strength_end_kg_m3, STRENGTHS), S(bath_mass_end_kg, MASSES), S(still_level_end_m, LEVELS), S(level_max_m.value, LEVELS),
    S(freeboard_min_m.value, LEVELS), S(still_level_min_m.value, LEVELS), S(layer_max_kg.value, MASSES),
    S(temperature_max_K.value, KELVINS), S(temperature_min_K.value, KELVINS), S(steam_total_kg, MASSES),
    S(vented_total_kg, MASSES), S(evaporated_total_kg, MASSES), S(layer_boiled_total_kg, MASSES), S(water_added_kg, MASSES),
    S(rinse_added_kg, MASSES), S(trapped_kg, MASSES), S(released_kg, MASSES), S(water_controlled_kg, MASSES),
    S(condensate_kg, MASSES), S(salts_added_kg, MASSES), S(liquid_added_kg, MASSES), S(drag_out_kg, MASSES),
    S(taken_kg, MASSES), S(returned_kg, MASSES), S(heater_total_J, HEATS), S(input_total_J, HEATS),
    S(undissolved_max_kg, MASSES), S(valve_quiet_kg, MASSES), S(valve_open_share, SHARES), S(time_to_boil_s, TIMES),
    S(boiling_share, SHARES), S(overflow_s, TIMES), S(still_overflow_s, TIMES), S(crystals_max_kg, MASSES),
};
#define L(member, size) {"load " #member, offsetof(boil_load_result, member), size}
static const figure of_load[] = {
    L(recovery_s, TIMES), L(boil_lost_s, TIMES), L(lowest_temperature_K, KELVINS), L(hot_s, TIMES), L(drag_out_kg, MASSES),
    L(level_max_m, LEVELS),
};
/* clang-format on */

typedef struct {
    double of[SIZES];
    figures_more more;
} sizes;

static sizes sizes_of(const boil_plant *p, const boil_history *h, figures_more more)
{
    double kg = h->summary.bath_mass_start_kg;
    return (sizes){{[TIMES] = h->end_s,
                    [KELVINS] = 100,
                    [MASSES] = kg,
                    [LEVELS] = p->tank.depth_m,
                    [HEATS] = kg * 4e5,
                    [SHARES] = 1,
                    [STRENGTHS] = 1000},
                   more};
}

/* An event is found on the cubic through its step, which knows the time of a fading boil to some tenths of a millisecond. */
#define EVENT_S 2e-3

static void compare(const figure *f, const void *one, const void *other, const sizes *s, figures_apart *worst)
{
    double a = *(const double *)(const void *)((const char *)one + f->where);
    double b = *(const double *)(const void *)((const char *)other + f->where);
    const double more[SIZES] = {[MASSES] = s->more.mass_kg,
                                [LEVELS] = s->more.level_m,
                                [TIMES] = EVENT_S + s->more.time_s,
                                [SHARES] = (EVENT_S + s->more.time_s) / s->of[TIMES]};
    double allowed = more[f->size];
    double apart = isnan(a) && isnan(b)   ? 0
                   : isnan(a) != isnan(b) ? (double)INFINITY
                                          : (fabs(a - b) - allowed) / s->of[f->size];
    if (apart > worst->apart)
        *worst = (figures_apart){apart, f->name, a, b};
}

figures_apart figures_compare(const boil_plant *p, const boil_history *one, const boil_history *other, figures_more more)
{
    figures_apart worst = {0, "nothing", 0, 0};
    sizes s = sizes_of(p, one, more);
    for (size_t i = 0; i < COUNT(of_summary); i++)
        compare(&of_summary[i], &one->summary, &other->summary, &s, &worst);
    for (size_t k = 0; k < one->loads_count && one->loads_count == other->loads_count; k++)
        for (size_t i = 0; i < COUNT(of_load); i++)
            compare(&of_load[i], &one->loads[k], &other->loads[k], &s, &worst);
    return worst;
}
