/* word_lists.c -- the words of the scenario language, one a line, for a test to look up each of them in the manual. */
#include "actions/action.h"
#include "actions/load_shape.h"
#include "manual/pages.h"
#include "scenario/keys.h"

void words_of_settings(FILE *to)
{
    for (size_t i = 0; i < key_count(); i++)
        fprintf(to, "%s\n", key_at(i)->words);
}

void words_of_acts(FILE *to)
{
    const action_type *type;
    const load_shape *shape;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        fprintf(to, "%s\n", type->keyword);
    for (size_t i = 0; (shape = load_shape_listed(i)) != NULL; i++)
        fprintf(to, "%s\n", shape->words);
    for (size_t i = 0; i < action_load.clause_count; i++)
        fprintf(to, "%s\n", action_load.clauses[i].words);
}

void words_of_units(FILE *to)
{
    const unit *u;
    for (int d = 0; d < DIM_COUNT; d++)
        for (size_t i = 0; (u = unit_listed((unit_dimension)d, i)) != NULL; i++)
            fprintf(to, "%s\n", u->spellings[0]);
}
