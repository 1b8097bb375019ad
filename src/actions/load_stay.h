/* actions/load_stay.h -- how long a load stays in: "for 20 min", "for 20 min at the boil", "no later than 7:30". */
#ifndef ACTIONS_LOAD_STAY_H
#define ACTIONS_LOAD_STAY_H

#include "actions/action.h"

/* As written, beside what it puts into the load. */
typedef struct {
    const char *later; /* where 'no later than' stands; NULL: nowhere */
} load_stay;

/* For the manual: a clause as it is written, and what it means; form NULL beyond the last. */
typedef struct {
    const char *form, *meaning;
} load_stay_clause;
load_stay_clause load_stay_listed(size_t index);

/* Reads a part of a load as one of these clauses. Of "for TIME at the boil" it takes the end off, and leaves "for TIME" to be read, as
   UNKNOWN. WRONG: with a message. */
action_clause_end load_stay_read(cursor *part, const action_reader *r, load_stay *s, boil_load *l);

/* All of it together: a clause without an effect is a mistake. False, with a message, then. */
bool load_stay_settle(const load_stay *s, const cursor *place, const boil_load *l);

/* ", out at 6:25", ", in until it has had 20 min at the boil, out at 7:30 at the latest", ", in until lifted" */
void load_stay_add(const action_view *v, action_text *t);

/* Of its lifting: "once it has had 20 min at the boil, or at 7:30"; nothing where the clock alone says when. */
void load_stay_lift_add(const action_view *v, action_text *t);

#endif
