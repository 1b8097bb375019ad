#ifndef BOIL_LAYER_H
#define BOIL_LAYER_H
typedef struct { double cover_thickness_m; } boil_layer_law;
#endif
