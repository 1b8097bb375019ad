#include "actions/action.h"

#include <string.h>

bool action_clause_first(const cursor *part, const char *at, const char *words, bool said)
{
    if (said)
        cursor_error(part, at, "'%s' is said twice", words);
    return !said;
}

action_clause_end action_clause_read(cursor *part, const action_clause *clauses, size_t count, quantity *said, boil_action *a)
{
    const char *start = part->at;
    size_t i = 0;
    while (i < count && !cursor_take(part, clauses[i].words))
        i++;
    if (i == count)
        return ACTION_CLAUSE_UNKNOWN;
    const action_clause *k = &clauses[i];
    if (!action_clause_first(part, start, k->words, said[i].text != NULL))
        return ACTION_CLAUSE_WRONG;
    said[i].text = start;
    if (!quantity_read(part, k->words, UNIT_OF(k->dimension), &said[i]) || !cursor_expect_end(part) ||
        (k->within.unit != NULL && !quantity_within(part, k->words, &said[i], &k->within)))
        return ACTION_CLAUSE_WRONG;
    if (k->where > 0)
        memcpy((char *)a + k->where, &said[i].si, sizeof said[i].si);
    return ACTION_CLAUSE_READ;
}
