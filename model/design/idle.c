#include "design/idle.h"

#include <math.h>

#include "base/constants.h"

double boil_insulation_economic(const boil_wall_insulation *w, double hours_a_year, double heat_price, double thickness_price)
{
    double year = hours_a_year * 3600 * heat_price * w->conductivity_W_mK * (w->bath_K - w->room_K);
    return fmax(0, sqrt(fmax(0, year / thickness_price)) - w->conductivity_W_mK / w->film_W_m2K);
}

double boil_insulation_touch(const boil_wall_insulation *w)
{
    const double touch_K = BOIL_ZERO_CELSIUS + 60;
    if (!(w->room_K < touch_K))
        return (double)NAN;
    return fmax(0, w->conductivity_W_mK / w->film_W_m2K * ((w->bath_K - w->room_K) / (touch_K - w->room_K) - 1));
}
