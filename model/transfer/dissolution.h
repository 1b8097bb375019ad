/* transfer/dissolution.h -- salt in the bath: falling, lying on the floor, hanging over it as a crust, dissolving.

   What drives it is the brine at a grain's surface, saturated at the bath's temperature: per m3 it holds dC more salts than the
   bath, and it is heavier. Salt diffuses into the bath at
       D = 4e-9 m2/s (T/413 K) (1.63e-3 Pa s/mu)^(2/3)                                                                       (1)
   [the skin's D (transfer/skin.h), that of 50 % hydroxide at 140 degC; with the viscosity as Hiss & Cussler, AIChE J. 19 (1973)
   698, from memory; x0.5 to 2: 4.3e-9 in water of 25 degC, where the limiting value is 2.1e-9]; through the brine's film with
   mu = (mu_bath mu_brine)^(1/2), judgement.

   Stirred, a surface gives off [Calderbank & Moo-Young, Chem. Eng. Sci. 16 (1961) 39]
       k = 0.13 (eps nu)^(1/4) Sc^(-2/3),  Sc = nu/D,  eps stirring power, W/kg.                                           (2)
   Grains of size d fall at [Ferguson & Church, J. Sediment. Res. 74 (2004) 933]
       w = R g d^2/(18 nu + sqrt(0.75 R g d^3)),  R = (rho_s - rho)/rho,                                                   (3)
   and shed their brine as they do [Ranz & Marshall, Chem. Eng. Prog. 48 (1952) 141]:
       Sh = k d/D = 2 + 0.6 (w d/nu)^(1/2) Sc^(1/3).                                                                       (4)
   (2) and (4) are blended as fourth powers (judgement, low: stirred grains are said to get 1.5 to 2 times (4) [Harriott, AIChE J.
   8 (1962) 93, from memory]). In suspension they have the area 6 m/(rho d) and dissolve at k dC times it: first
   order in m, so that nothing is singular when the last grain goes, and never faster than in a second. (Shrinking grains finish in about three such times.)
   A cloud of them sinks faster than each, by (g' h)^(1/2), g' = g drho/rho of the cloud (judgement); stirring keeps up the
   share eps^2/(eps^2 + eps_0^2), and stirs as much of a bed up again.

   On the floor brine heavier than the bath does not rise: it lies on the bed and creeps off it over its edges. Natural convection
   of a level surface whose fluid stays there [McAdams, Heat Transmission, 3rd ed. (1954), the stable side; 1e5 < Ra < 1e10, used
   to 1e12]:
       Sh = k L/D = 0.27 Ra^(1/4),  Ra = g drho L^3/(mu D),  L a quarter of the floor's side,                                 (5)
   likewise blended with (2). Band x0.3 to 5: brine that stays wholly lets through what diffuses in an hour; brine that
   runs off, as from scattered grains, Sh = 0.14 Ra^(1/3). A bed dissolves from its top only, k dC per area it covers, and
   insulates a heated floor: dT = q thickness/k_bed, at most 300 K.                                                        (6)

   Salt that falls out of a still cold bath grows onto floor and surface, in the end half of it to the surface (0.2 to 0.8,
   judgement), within some ten minutes of the cooling; the rest is carried on in solution. Within 5 K of the boil (judgement, 2 to 10) it
   falls out the more slowly the nearer the boil, and at the boil not at all: what it gives off as it falls out would make a bath
   simmer that the fire no longer does, so that it falls out as fast as the bath loses heat. There it is a crust frozen to the walls,
   as thick as a bed of its mass and covering as much. Nothing evaporates through it, and steam must lift it and break it as a
   plate held along its edges:
       dp = rho_c g s + 3.25 sigma (s/W)^2                                                                                    (7)
   [clamped square plate under even load, greatest stress 0.308 p (W/s)^2 at the edges: Timoshenko & Woinowsky-Krieger, Theory of
   Plates and Shells, from memory]; sigma 2 MPa, 0.5 (salt cake) to 5 (rock salt), judgement. Until then the bath under it heats
   over its boiling point, by the kelvins that raise its vapour pressure by dp. The crust dissolves from below, where its brine
   falls away [McAdams, the unstable side], blended with (2) as above:
       Sh = 0.14 Ra^(1/3).                                                                                                    (8)
   Stirring breaks it up within some ten seconds, and so does the boil; what it held back comes with that. Water poured onto a
   crust floats above it as on the open bath, and mixes in through its cracks: the brine it makes of the crust lies on it, (5),
   and does not count beside (8). A crust is wet from below, and so not dry salt.

   Salt is dry where it stands above the liquid: where the liquid does not fill the pores, 0.4 of the room it takes as a bed. Heaps
   are uneven: the share of the surface that is dry goes from 0 to 1 as the liquid goes from 1.2 to 0.8 of the pores (judgement),
   without a kink. */
#ifndef BOIL_TRANSFER_DISSOLUTION_H
#define BOIL_TRANSFER_DISSOLUTION_H

/* What the flows depend on. */
typedef struct {
    double grain_m;                      /* 1 mm; 0.2 to 10 mm */
    double temperature_K;                /* of the bath, and of all that is in it */
    double liquid_kg_m3, viscosity_Pa_s; /* of the bath */
    double brine_kg_m3, brine_viscosity_Pa_s;
    double strength_difference_kg_m3; /* dC; 0: the bath is saturated, and dissolves nothing */
    double stirring_W_kg;             /* eps */
    double area_m2, depth_m;          /* of the pool */
} boil_dissolution_place;

typedef struct {
    double from_suspension_kg_s, from_bed_kg_s; /* dissolving */
    double settling_kg_s, stirred_up_kg_s;
    double bed_m; /* thickness */
} boil_dissolution_flow;

double boil_dissolution_diffusivity(double temperature_K, double viscosity_Pa_s); /* (1), m2/s */
double boil_dissolution_stirred(const boil_dissolution_place *p);                 /* k of (2), m/s */
double boil_dissolution_fall(const boil_dissolution_place *p);    /* w of (3), m/s; 0 when the liquid is as heavy */
double boil_dissolution_falling(const boil_dissolution_place *p); /* k of (4), m/s */
double boil_dissolution_lying(const boil_dissolution_place *p);   /* k of (5), m/s; 0 when the brine is no heavier */
double boil_dissolution_kept_up(const boil_dissolution_place *p); /* share that stirring keeps up, 0 to 1 */
double boil_dissolution_time(const boil_dissolution_place *p);    /* s, time constant in suspension; infinite: saturated */
boil_dissolution_flow boil_dissolution_exchange(const boil_dissolution_place *p, double suspended_kg, double bed_kg);

typedef struct {
    double thickness_m, cover; /* share of the surface */
    double growing_kg_s, dissolving_kg_s, broken_kg_s;
    double holds_Pa; /* (7) */
} boil_dissolution_crust;

/* kg of a crust so thick, or a bed. */
double boil_dissolution_crust_mass(double thickness_m, double area_m2);

/* Of so much crust, in a bath that holds an excess in solution and so much salt, the crust with it, out of it. */
boil_dissolution_crust boil_dissolution_crust_of(const boil_dissolution_place *p, double crust_kg, double excess_kg,
                                                 double undissolved_kg);

/* Share of the surface that is dry salt, 0 to 1, under so much undissolved salt and liquid. */
double boil_dissolution_dry(double undissolved_kg, double liquid_m3);

/* (6), K, for the heat through the floor under the bed, W/m2. */
double boil_dissolution_bed_superheat(double bed_m, double flux_W_m2);

#endif
