#include <math.h>

#include "replay/replay.h"

boil_row replay_at(const replay *r, double time_s)
{
    boil_row at = {.left_m = REPLAY_NOTHING_M};
    const thin_table rows = replay_rows_table(r);
    thin_at(&rows, time_s, &at);
    at.time_s = time_s;
    return at;
}

replay_band replay_band_at(const replay *r, double time_s)
{
    replay_band at = {.left_m = REPLAY_NOTHING_M};
    const thin_table band = replay_band_table(r);
    thin_at(&band, time_s, &at);
    at.time_s = time_s;
    return at;
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
    if (s.layer_kg >= REPLAY_AFLOAT_KG)
        TEXT_ADD(w.text, "; %s of water float", SHOWN(r->system, MASS, s.layer_kg));
    if (time_s >= r->of->central.summary.overflow_s || (s.boiling && s.layer_kg < REPLAY_AFLOAT_KG))
        return w;
    if (left_m < 0)
        TEXT_ADD(w.text, "; if it lets go now: over the rim");
    else if (left_m < r->of->scenario->plant.limits.freeboard_m)
        TEXT_ADD(w.text, "; if it lets go now: %s to the rim", SHOWN(r->system, LENGTH, left_m));
    return w;
}
