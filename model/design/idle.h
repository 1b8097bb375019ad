/* design/idle.h -- what to put around a bath that stands hot. SI units. */
#ifndef BOIL_DESIGN_IDLE_H
#define BOIL_DESIGN_IDLE_H

/* What a wall's insulation has to do with. */
typedef struct {
    double conductivity_W_mK; /* 0.070 as built: see boil_losses */
    double film_W_m2K;        /* outside, 10: radiation and air, judgement */
    double bath_K, room_K;
} boil_wall_insulation;

/* Thickness, m, of least cost: sqrt(N c k dT/(eta b)) - k/h_o, never below 0. heat_price: of a joule given to the bath, fuel
   over its efficiency; thickness_price: b, of a m2 a m thick, for a year. [classical, as in economic-thickness handbooks, from
   memory] */
double boil_insulation_economic(const boil_wall_insulation *w, double hours_a_year, double heat_price, double thickness_price);

/* Thickness, m, at which the face is at 60 degC, 140 degF, what skin bears on metal for a few seconds [ASTM C1055, from
   memory]. 0 for a bath no hotter than that; NaN in a room as hot. */
double boil_insulation_touch(const boil_wall_insulation *w);

#endif
