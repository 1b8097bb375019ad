/* commands/size/grid.h -- the heat, and what comes with it, over two numbers of a scenario: its proportions, its room, its loads. */
#ifndef COMMANDS_SIZE_GRID_H
#define COMMANDS_SIZE_GRID_H

#include "commands/size/answer.h"
#include "scenario/uncertain.h"

enum { SIZE_GRID_STEPS = 12 }; /* of either number at most: each cell is a search */

typedef struct {
    scenario_text *text;
    const uncertain_grid *down, *across;
    bool same_volume; /* of bath: what is left of the tank's measures follows, and the rim stays as far above the level */
    double recover_s; /* 0: the scenario's */
    const quantity *load;
} size_grid_question;

typedef struct {
    double down, across; /* SI */
    bool refused;        /* there is no such scenario */
    double level_m, volume_m3;
    double heat_W; /* NaN: none does */
    double calm_W;
    double rim_m; /* least depth that leaves the freeboard asked for, by all laws */
    bool holds;
} size_grid_cell;

typedef struct {
    const scenario *scenario;
    const size_grid_question *question;
    size_grid_cell cells[SIZE_GRID_STEPS * SIZE_GRID_STEPS]; /* a line after the other */
    size_t count;
} size_grid;

double size_grid_value(const uncertain_grid *g, size_t step); /* from 0, SI */

/* BOIL_OK, or a failure. */
int size_grid_of(const size_grid_question *q, const scenario *base, size_grid *out);

void size_grid_report(const void *answer, const output *o, FILE *to);
extern const field size_grid_fields[], size_grid_cell_fields[]; /* of the whole, and of a cell */
void size_grid_csv(const void *answer, FILE *to);

#endif
