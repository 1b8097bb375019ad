/* practise/screen/tank_view.h -- the tank in characters: how high the bath stands, what floats, bubbles, loads, salt on the floor, fire. */
#ifndef PRACTISE_SCREEN_TANK_VIEW_H
#define PRACTISE_SCREEN_TANK_VIEW_H

#include "terminal/canvas.h"
#include "practise/panel.h"

/* Rows of the screen: two above the rim, twelve for the depth, the floor and the fire. */
enum { TANK_TOP = 2, TANK_RIM = 4, TANK_FLOOR = 16, TANK_LEFT = 8, TANK_INSIDE = 28 };

/* `moment` counts the drawings: bubbles rise with it. */
void tank_view_draw(canvas *c, const shift *s, const panel *p, unsigned moment, unit_system u);

#endif
