#ifndef BOIL_POOL_H
#define BOIL_POOL_H
typedef struct { double viscosity_Pa_s, conductivity_W_mK, expansion_1_K, surface_tension_N_m; } boil_transport;
typedef struct { double distribution; } boil_pool;
#endif
