/* commands/explore/grid.h -- the steps of a grid in the words of reports and pictures. */
#ifndef COMMANDS_EXPLORE_GRID_H
#define COMMANDS_EXPLORE_GRID_H

#include "base/format.h"
#include "commands/explore/answer.h"

const char *explore_grid_unit(const explore_answer *s, unit_system system);          /* of all steps; "" for a bare number */
double explore_grid_shown(const explore_answer *s, unit_system system, size_t cell); /* in that unit */
formatted_text explore_grid_words(const explore_answer *s, unit_system system, size_t cell); /* "300 kBtu/h" */

#endif
