/* bath/rates_parts.h -- the parts of a view, for bath/rates.c alone. Each function gives one part from what it names: the
   bath, the state, and parts that came before; the levels are of most of those, and take the view. Those that can fail write
   their part, named last, and give BOIL_OK, or a failure after which the part is worth nothing. */
#ifndef BOIL_BATH_RATES_PARTS_H
#define BOIL_BATH_RATES_PARTS_H

#include "boilback.h"
#include "bath/rates_view.h"

/* bath/rates_bath.c: the bath itself, what heats and controls it, and the salts in it. */
boil_outcome boil_rates_of_solution(const boil_bath *b, const double y[], boil_rates_guess *g, boil_rates_solution *s);
boil_rates_heater boil_rates_of_heater(const boil_bath *b, const double y[], double bath_K);
boil_rates_control boil_rates_of_control(const boil_bath *b, const double y[], double bath_K);
boil_rates_pool boil_rates_of_pool(const boil_bath *b, const double y[], const boil_rates_solution *s);
boil_rates_salts boil_rates_of_salts(const boil_bath *b, const double y[], const boil_rates_solution *s,
                                     const boil_rates_pool *pool, double heater_W);
double boil_rates_salts_volume(const double y[]); /* m3, of all that is not dissolved */
/* Salt that water soaking into it dissolves, besides; some of it is dry. */
void boil_rates_soak_salts(const double y[], double dissolving_kg_s, boil_rates_salts *o);
boil_rates_levels boil_rates_of_levels(const boil_bath *b, const boil_rates_view *v);

/* bath/rates_loads.c: what hangs in it. The rates of the steel's temperatures go to dydt unless it is NULL. */
double boil_rates_displaced(const boil_bath *b, double t); /* by all that hangs in it, m3 */
boil_rates_loads boil_rates_of_loads(const boil_bath *b, double t, const double y[], const boil_rates_solution *s,
                                     const boil_rates_pool *pool, double dydt[]);

/* bath/rates_water.c: the water afloat, what leaves through the surface, and what goes in. */
boil_outcome boil_rates_of_layer(const boil_bath *b, double t, const double y[], const boil_rates_solution *s,
                                 const boil_rates_pool *pool, const boil_rates_salts *salts, double heater_W,
                                 boil_rates_guess *g, boil_rates_layer *out);
boil_outcome boil_rates_of_surface(const boil_bath *b, const boil_rates_solution *s, const boil_rates_salts *salts,
                                   const boil_rates_layer *layer, double steam_leaving_kg_s, boil_rates_guess *g,
                                   boil_rates_surface *out);
boil_rates_inflow boil_rates_of_inflow(const boil_bath *b, double valve_kg_s, const boil_rates_surface *surface);
boil_rates_outflow boil_rates_of_outflow(const boil_bath *b, const double y[], const boil_rates_solution *s,
                                         const boil_rates_salts *salts, const boil_rates_layer *layer);
boil_rates_layer_vapour boil_rates_of_layer_vapour(const boil_bath *b, const boil_rates_layer *layer,
                                                   const boil_rates_surface *surface, const boil_rates_inflow *in);

#endif
