#include "case/grading.h"

#include <math.h>

#define NONE ((double)NAN)

/* clang-format off */
const boil_grading boil_gradings[BOIL_FOUND_KINDS] = {
    /*                              NOTICE   CAUTION  WARNING  DANGER    last    k  margin, in         x */
    [BOIL_FOUND_NEVER_BOILS]    = {{NONE,    0,       0,       NONE},   0.5,    1, 0,     BOIL_PER_ONE},       /* heat that is short, share of what would do */
    [BOIL_FOUND_NEVER_RETURNS]  = {{0,       1,       NONE,    NONE},   10,     1, 1,     BOIL_PER_RECOVERY},  /* quiet at the end, in recovery limits */
    [BOIL_FOUND_LAYER_OUTLASTS] = {{NONE,    NONE,    0,       1},      1,      1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard that would be used up, of the limit */
    [BOIL_FOUND_BOIL_LOST]      = {{1,       3,       15,      NONE},   15,     1, 1,     BOIL_PER_RECOVERY},  /* quiet, in recovery limits */
    [BOIL_FOUND_LIQUID_STOPS]   = {{1,       3,       15,      NONE},   15,     1, 1,     BOIL_PER_RECOVERY},  /* likewise */
    [BOIL_FOUND_LOAD_HEAVY]     = {{1,       2,       NONE,    NONE},   4,      0, 0.005, BOIL_PER_ONE},       /* parts and basket per volume, in rules of thumb */
    [BOIL_FOUND_LOAD_QUIET]     = {{0,       1,       NONE,    NONE},   5,      1, 1,     BOIL_PER_RECOVERY},  /* quiet before it, in recovery limits */
    [BOIL_FOUND_LOAD_THROUGH]   = {{NONE,    0,       1./3,    1},      1,      1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard that would be used up, of the limit */
    [BOIL_FOUND_LOAD_COLD]      = {{0,       NONE,    NONE,    NONE},   600,    1, 1,     BOIL_PER_ONE},       /* short of hot through, s */
    [BOIL_FOUND_TUBES]          = {{NONE,    0,       NONE,    NONE},   1,      0, 0,     BOIL_PER_ONE},       /* tubes, kg */
    [BOIL_FOUND_NOT_RESOLVED]   = {{NONE,    NONE,    0,       NONE},   1,      1, 0,     BOIL_PER_ONE},       /* 1 */
    [BOIL_FOUND_LEFT_RANGE]     = {{0,       NONE,    0.5,     NONE},   1,      1, 0,     BOIL_PER_ONE},       /* 1: of temperature or strength, 0.25: else */
    [BOIL_FOUND_WATER_QUIET]    = {{NONE,    0.0227,  0.0227,  NONE},   2.27,   1, 0,     BOIL_PER_ONE},       /* poured on the quiet bath, kg */
    [BOIL_FOUND_LAYER]          = {{0,       1./3,    2./3,    1},      1,      1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard that would be used up, of the limit */
    [BOIL_FOUND_SURFACE_BOILS]  = {{NONE,    0,       0,       NONE},   3600,   1, 1,     BOIL_PER_ONE},       /* for so long, s */
    [BOIL_FOUND_WATER_QUENCHES] = {{0,       0,       0,       NONE},   11.1,   1, 0.05,  BOIL_PER_ONE},       /* boiling point below where water gives steam, K */
    [BOIL_FOUND_WATER_FAST]     = {{0,       0,       NONE,    NONE},   1,      1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard that would be used up, of the limit */
    [BOIL_FOUND_WATER_SHORT]    = {{0.5,     1,       NONE,    NONE},   1,      0, 0.005, BOIL_PER_ONE},       /* drift, of what leads out of the band */
    [BOIL_FOUND_SURGE]          = {{2,       3,       3,       NONE},   3,      1, 0.01,  BOIL_PER_ONE},       /* steam, in calm ones */
    [BOIL_FOUND_OVERFLOW]       = {{NONE,    NONE,    NONE,    0},      0.1,    2, 0,     BOIL_PER_ONE},       /* over the rim, m */
    [BOIL_FOUND_OVERFLOW_STILL] = {{NONE,    NONE,    NONE,    0},      0.0254, 2, 0,     BOIL_PER_ONE},       /* over the rim, m */
    [BOIL_FOUND_FREEBOARD]      = {{0,       1./3,    2./3,    NONE},   1./3,   1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard used up, of the limit */
    [BOIL_FOUND_TOO_HOT]        = {{0,       2.78,    13.9,    NONE},   13.9,   1, 0.05,  BOIL_PER_ONE},       /* boiling point over the band, K */
    [BOIL_FOUND_TOO_COOL]       = {{0,       8.33,    NONE,    NONE},   8.33,   1, 0.05,  BOIL_PER_ONE},       /* below it, K */
    /* 0.31: less than one water to each hydroxide, 18.015/58.012 */
    [BOIL_FOUND_NEARLY_DRY]     = {{NONE,    -0.36,   -0.31,   -0.25},  0.05,   1, 0.001, BOIL_PER_ONE},       /* share of water, less than nothing */
    [BOIL_FOUND_HEATER_BARE]    = {{NONE,    -0.0508, 0,       NONE},   0.0508, 1, 1e-3,  BOIL_PER_ONE},       /* level below the heater's top, m */
    [BOIL_FOUND_FLOOR_BARE]     = {{NONE,    -0.1524, -0.0762, NONE},   0.0762, 1, 1e-3,  BOIL_PER_ONE},       /* level, less than nothing, m */
    /* 343 degC: a carbon steel's allowable stress is level to about there (pressure vessel codes, from memory) */
    [BOIL_FOUND_FLOOR_HOT]      = {{NONE,    477.6,   533.2,   616.5},  83.3,   1, 0.05,  BOIL_PER_ONE},       /* floor metal, K */
    [BOIL_FOUND_PARTS_BARE]     = {{0,       NONE,    NONE,    NONE},   0.0508, 1, 1e-3,  BOIL_PER_ONE},       /* level below the parts' top, m */
    [BOIL_FOUND_SUPERHEAT]      = {{NONE,    1,       3,       NONE},   3,      1, 0.005, BOIL_PER_ONE},       /* a tenth of the stored steam, of the room over it */
    [BOIL_FOUND_TALL]           = {{1.2,     2,       NONE,    NONE},   2,      0, 0.005, BOIL_PER_ONE},       /* level to the root of the area */
    [BOIL_FOUND_SALT_QUIET]     = {{NONE,    0.0227,  0.0227,  NONE},   9.07,   1, 0,     BOIL_PER_ONE},       /* on the quiet, unmixed bath, kg */
    [BOIL_FOUND_SALT_SLUG]      = {{NONE,    0,       1./3,    1},      1./3,   1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard used up, of the limit */
    [BOIL_FOUND_DRY_SALT]       = {{NONE,    NONE,    0,       1},      1,      1, 0,     BOIL_PER_ONE},       /* steam it can give, of what lifts to the rim */
    [BOIL_FOUND_SALT_BED]       = {{0,       10,      30,      NONE},   100,    1, 0.05,  BOIL_PER_ONE},       /* floor under it over the bath, K */
    [BOIL_FOUND_SALT_MUCH]      = {{0,       1./3,    1,       NONE},   1,      0, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard used up once it is watered, of the limit */
    [BOIL_FOUND_VALVE_HUNTS]    = {{12,      NONE,    NONE,    NONE},   12,     0, 0.05,  BOIL_PER_ONE},       /* openings an hour */
    [BOIL_FOUND_VALVE_SHORT]    = {{0,       0,       NONE,    NONE},   2.78,   0, 0.05,  BOIL_PER_ONE},       /* over twice the differential at the end, K */
    [BOIL_FOUND_VALVE_QUIET]    = {{NONE,    0.0227,  0.0227,  NONE},   2.27,   1, 0,     BOIL_PER_ONE},       /* let in on the quiet bath, kg */
    [BOIL_FOUND_CRYSTALS]       = {{BOIL_GRADING_HAZE, 0.01, NONE, NONE},   0.03,   1, 0,     BOIL_PER_ONE},       /* out of solution, of the bath */
    [BOIL_FOUND_CRUST]          = {{1.6e-3,  6.35e-3, 6.35e-3, NONE},   12.7e-3, 1, 1e-4,  BOIL_PER_ONE},       /* thickness, m */
    [BOIL_FOUND_RESTART]        = {{NONE,    0,       30,      200},    200,    1, 0.05,  BOIL_PER_ONE},       /* floor below it over the bath, K */
    [BOIL_FOUND_THERMOSTAT]     = {{0,       0,       NONE,    NONE},   5,      0, 0,     BOIL_PER_ONE},       /* times it stilled the boil */
    [BOIL_FOUND_HOLLOWS]        = {{0,       1./3,    2./3,    1},      1,      1, 1e-3,  BOIL_PER_FREEBOARD}, /* freeboard that would be used up, of the limit */
    [BOIL_FOUND_BAIL_HOT]       = {{NONE,    338.7,   338.7,   NONE},   55.6,   0, 0.05,  BOIL_PER_ONE},       /* bath as it is bailed, K: 150 degF */
    [BOIL_FOUND_GOAL_MISSED]    = {{1,       NONE,    NONE,    NONE},   5,      0, 0,     BOIL_PER_ONE},       /* steps of the gauge */
    [BOIL_FOUND_LEVEL_HIGH]     = {{0.0127,  0.0381,  NONE,    NONE},   0.0508, 0, 1e-3,  BOIL_PER_ONE},       /* still level over the mark, m */
    [BOIL_FOUND_UNATTENDED]     = {{0,       1,       NONE,    NONE},   1,      0, 0,     BOIL_PER_ONE},       /* 1: a load comes out, 2: something is poured */
    [BOIL_FOUND_BOIL_SHORT]     = {{60,      NONE,    NONE,    NONE},   300,    1, 1,     BOIL_PER_ONE},       /* short of the time at the boil, s */
    [BOIL_FOUND_PLACE_TAKEN]    = {{NONE,    0,       NONE,    NONE},   1,      1, 0,     BOIL_PER_ONE},       /* 1: a load where another hangs */
    [BOIL_FOUND_BREAK_QUIET]    = {{0,       1,       NONE,    NONE},   10,     1, 1,     BOIL_PER_RECOVERY},  /* quiet in breaks, in recovery limits */
    [BOIL_FOUND_SALT_UNSTATED]  = {{NONE,    0,       NONE,    NONE},   10,     1, 0.05,  BOIL_PER_ONE},       /* start below where salts fall out, K */
};
/* clang-format on */

const boil_found_kind boil_grading_watched[BOIL_WATCHES] = {
    [BOIL_WATCH_TOO_HOT] = BOIL_FOUND_TOO_HOT,
    [BOIL_WATCH_TOO_COOL] = BOIL_FOUND_TOO_COOL,
    [BOIL_WATCH_NEARLY_DRY] = BOIL_FOUND_NEARLY_DRY,
    [BOIL_WATCH_FREEBOARD] = BOIL_FOUND_FREEBOARD,
    [BOIL_WATCH_OVERFLOW] = BOIL_FOUND_OVERFLOW,
    [BOIL_WATCH_OVERFLOW_STILL] = BOIL_FOUND_OVERFLOW_STILL,
    [BOIL_WATCH_HEATER_BARE] = BOIL_FOUND_HEATER_BARE,
    [BOIL_WATCH_FLOOR_BARE] = BOIL_FOUND_FLOOR_BARE,
    [BOIL_WATCH_FLOOR_HOT] = BOIL_FOUND_FLOOR_HOT,
    [BOIL_WATCH_PARTS_BARE] = BOIL_FOUND_PARTS_BARE,
    [BOIL_WATCH_SALT_BED] = BOIL_FOUND_SALT_BED,
    [BOIL_WATCH_RESTART] = BOIL_FOUND_RESTART,
    [BOIL_WATCH_CRUST] = BOIL_FOUND_CRUST,
    [BOIL_WATCH_CRYSTALS] = BOIL_FOUND_CRYSTALS,
    [BOIL_WATCH_SURFACE_BOILS] = BOIL_FOUND_SURFACE_BOILS,
    [BOIL_WATCH_WATER_FAST] = BOIL_FOUND_WATER_FAST,
    [BOIL_WATCH_SURGE] = BOIL_FOUND_SURGE,
    [BOIL_WATCH_LAYER] = BOIL_FOUND_LAYER,
    [BOIL_WATCH_LEVEL_HIGH] = BOIL_FOUND_LEVEL_HIGH,
};

double boil_grading_unit(const boil_grading *g, const boil_limits *l)
{
    const double least_m = 1e-3;
    return g->per == BOIL_PER_RECOVERY ? l->recovery_s : g->per == BOIL_PER_FREEBOARD ? fmax(l->freeboard_m, least_m) : 1;
}

double boil_grading_margin(const boil_grading *g, const boil_limits *l)
{
    return g->margin / boil_grading_unit(g, l);
}

/* The rim is reached, not passed. */
bool boil_grading_is_past(const boil_grading *g, boil_severity s, double x, double margin)
{
    const double rounding = 1e-9; /* or the unit something is written in decides at a break point */
    return g->weight == 2 ? x >= g->from[s] : x > g->from[s] + margin * (1 + rounding) + rounding * fabs(g->from[s]);
}

boil_severity boil_grading_of(const boil_grading *g, double x, double margin)
{
    int s = BOIL_SEVERITIES;
    while (s > 0 && !boil_grading_is_past(g, (boil_severity)(s - 1), x, margin))
        s--;
    return s > 0 ? (boil_severity)(s - 1) : BOIL_SEVERITIES;
}

/* To the next break point that lies further on; else the row's own. */
static double scale_of(const boil_grading *g, boil_severity s)
{
    for (int i = (int)s + 1; i < BOIL_SEVERITIES; i++)
        if (g->from[i] > g->from[s])
            return g->from[i] - g->from[s];
    return g->last;
}

/* A grade that the row has not, to which something else raised it, goes by the last one below that it has. */
static boil_severity graded(const boil_grading *g, boil_severity s)
{
    while (s > BOIL_SEVERITY_NOTICE && isnan(g->from[s]))
        s = (boil_severity)(s - 1);
    return s;
}

double boil_grading_rank(const boil_grading *g, double x, boil_severity s, bool likely)
{
    boil_severity by = graded(g, s);
    double past = x - g->from[by], depth = past > 0 ? 1 - exp(-past / scale_of(g, by)) : 0;
    return 1000 * (double)s + 200. * g->weight + (likely ? 50 : 0) + 49 * depth;
}
