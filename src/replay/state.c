#include <math.h>
#include <string.h>

#include "replay/replay.h"

/* Of records that begin with their time: the last one not after it. */
static size_t last_before(const void *list, size_t count, size_t size, double time_s)
{
    size_t low = 0, high = count;
    while (high > low + 1) {
        size_t middle = low + (high - low) / 2;
        double t;
        memcpy(&t, (const char *)list + middle * size, sizeof t);
        if (t <= time_s)
            low = middle;
        else
            high = middle;
    }
    return low;
}

static double share_of(double from_s, double to_s, double time_s)
{
    return to_s > from_s ? fmin(1, fmax(0, (time_s - from_s) / (to_s - from_s))) : 0;
}

static double mix(double a, double b, double share)
{
    return a + share * (b - a);
}

boil_row replay_at(const replay *r, double time_s)
{
    if (r->rows_count == 0)
        return (boil_row){.time_s = time_s, .left_m = REPLAY_NOTHING_M};
    size_t i = last_before(r->rows, r->rows_count, sizeof *r->rows, time_s), k = i + 1 < r->rows_count ? i + 1 : i;
    const boil_row *a = &r->rows[i], *b = &r->rows[k];
    double share = share_of(a->time_s, b->time_s, time_s);
    boil_row at = *a;
    at.time_s = time_s;
    at.temperature_K = mix(a->temperature_K, b->temperature_K, share);
    at.boiling_point_K = mix(a->boiling_point_K, b->boiling_point_K, share);
    at.steam_kg_s = mix(a->steam_kg_s, b->steam_kg_s, share);
    at.layer_kg = mix(a->layer_kg, b->layer_kg, share);
    at.layer_m = mix(a->layer_m, b->layer_m, share);
    at.still_level_m = mix(a->still_level_m, b->still_level_m, share);
    at.level_m = mix(a->level_m, b->level_m, share);
    at.void_fraction = mix(a->void_fraction, b->void_fraction, share);
    at.left_m = mix(a->left_m, b->left_m, share);
    at.coldest_load_K = mix(a->coldest_load_K, b->coldest_load_K, share);
    at.heater_W = mix(a->heater_W, b->heater_W, share);
    at.undissolved_kg = mix(a->undissolved_kg, b->undissolved_kg, share);
    at.crystals_kg = mix(a->crystals_kg, b->crystals_kg, share);
    return at;
}

replay_band replay_band_at(const replay *r, double time_s)
{
    if (r->band_count == 0)
        return (replay_band){.time_s = time_s, .left_m = REPLAY_NOTHING_M};
    size_t i = last_before(r->band, r->band_count, sizeof *r->band, time_s), k = i + 1 < r->band_count ? i + 1 : i;
    const replay_band *a = &r->band[i], *b = &r->band[k];
    double share = share_of(a->time_s, b->time_s, time_s);
    return (replay_band){time_s, mix(a->low_m, b->low_m, share), mix(a->high_m, b->high_m, share),
                         mix(a->left_m, b->left_m, share)};
}

replay_words replay_state(const replay *r, double time_s)
{
    replay_words w = {""};
    boil_row s = replay_at(r, time_s);
    double depth_m = r->of->scenario->plant.tank.depth_m, left_m = replay_band_at(r, time_s).left_m;
    double below_K = s.boiling_point_K - s.temperature_K;
    if (s.boiling)
        TEXT_ADD(w.text, "boils");
    else
        TEXT_ADD(w.text, "quiet, %s below boiling", SHOWN(r->system, DIFFERENCE, fmax(0, below_K)));
    if (s.level_m > depth_m)
        TEXT_ADD(w.text, "; over the rim");
    else
        TEXT_ADD(w.text, "; %s to the rim", SHOWN(r->system, LENGTH, depth_m - s.level_m));
    if (s.layer_kg >= 0.19)
        TEXT_ADD(w.text, "; %s of water float", SHOWN(r->system, MASS, s.layer_kg));
    if (time_s >= r->of->central.summary.overflow_s || (s.boiling && s.layer_kg < 0.19))
        return w;
    if (left_m < 0)
        TEXT_ADD(w.text, "; if it lets go now: over the rim");
    else if (left_m < r->of->scenario->plant.limits.freeboard_m)
        TEXT_ADD(w.text, "; if it lets go now: %s to the rim", SHOWN(r->system, LENGTH, left_m));
    return w;
}
