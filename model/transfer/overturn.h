/* transfer/overturn.h -- a layer of water folded into the bath below it: by the boil over the depth, or eaten away from below.

   The boil stirs with eps W per kg of solution, g j of rising steam and what a mixer gives. Eddies as large as the depth H turn over,
   and with them the layer, in
       tau_t = C (H^2/eps)^(1/3)                                                                                          (1)
   [eps ~ u^3/l: Tennekes & Lumley, A First Course in Turbulence, 1972, from memory]. C 1, 0.3 to 3, judgement: Corrsin, AIChE J.
   10 (1964) 870, gives 1.3 times C 1 at l = H/2, and the mixing time of stirred tanks, Nienow, Chem. Eng. Sci. 52 (1997) 2557,
   2.5 times (both from memory). Lifting the layer's lightness into half the depth takes energy, of which stirring gives eta:
       tau_e = m b/(2 eta rho A eps),   b = g (rho - rho_w)/rho_w.                                                        (2)
   eta 0.05, 0.02 to 0.2: 0.2 for shear [Peltier & Caulfield, Annu. Rev. Fluid Mech. 35 (2003), abstract]; less for bubble
   plumes, judgement. The layer mixes in at m/(tau_t + tau_e).

   Where nothing boils, motion of speed u below the interface, plumes or a load, erodes it at
       w_e = u min(0.2, 3.8 Ri^(-3/2)),   Ri = b H/u^2                                                                    (3)
   [form of Turner, J. Fluid Mech. 33 (1968) 639; constant of Hopfinger & Toly 1976, from memory; x 0.3 to 3].

   Steam that escapes from partial mixtures, chi y* for each kg mixed, stirs on its own. By (2) a little of it makes
       gain = 2 eta (rho/rho_v) (g/b) chi y*                                                                              (4)
   times as much: above 1 any seed grows. */
#ifndef BOIL_TRANSFER_OVERTURN_H
#define BOIL_TRANSFER_OVERTURN_H

typedef struct {
    double turnover_factor;   /* C: 1, 0.3 (grave) to 3 (mild); up to 20 to hold a layer back */
    double mixing_efficiency; /* eta: 0.05, 0.02 to 0.2 */
} boil_overturn;

typedef struct {
    double area_m2, depth_m; /* of the solution, H */
    double bath_kg_m3, water_kg_m3;
    double stirring_W_kg; /* eps; none or less: nothing mixes */
} boil_overturn_pool;

double boil_overturn_buoyancy(const boil_overturn_pool *p); /* b, m/s2; negative: the water is the heavier */

double boil_overturn_time(const boil_overturn *o, const boil_overturn_pool *p); /* tau_t, s; or infinite */
double boil_overturn_lifting_time(const boil_overturn *o, const boil_overturn_pool *p,
                                  double mass_kg); /* tau_e, s; or infinite */

/* m/(tau_t + tau_e), kg/s. *by_log_stirring: derivative with respect to ln eps, kg/s; may be NULL. */
double boil_overturn_mixing(const boil_overturn *o, const boil_overturn_pool *p, double mass_kg, double *by_log_stirring);

/* w_e of (3), m/s, for a speed u >= 0; water that is no lighter goes at 0.2 u. */
double boil_overturn_erosion(double buoyancy_m_s2, double depth_m, double speed_m_s);

/* (4). escaping: chi y*, kg of steam that reach the surface per kg mixed. */
double boil_overturn_gain(const boil_overturn *o, const boil_overturn_pool *p, double vapour_kg_m3, double escaping);

#endif
