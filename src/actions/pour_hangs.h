/* actions/pour_hangs.h -- what a pour hangs on: "until the mark", "while boiling", "stop with the boil", "no later than 7:30". */
#ifndef ACTIONS_POUR_HANGS_H
#define ACTIONS_POUR_HANGS_H

#include "actions/action.h"

/* As written, beside what it puts into boil_action.pour. */
typedef struct {
    const char *goal; /* "the mark", where it stands; NULL: none */
    size_t goal_length;
    const char *later; /* where 'no later than' stands; NULL: nowhere */
    quantity most;     /* 'at most'; text NULL: not said */
} pour_hangs;

/* These return false, with a message, on a mistake. */

/* "the mark", "level LENGTH" or "boiling point TEMPERATURE", behind 'until'. */
bool pour_hangs_goal(const action_reader *r, cursor *c, pour_hangs *h, boil_pour *p);

/* The amount behind 'at most', whose clause stands at `start`; amounts: its dimensions. */
bool pour_hangs_most(const action_reader *r, cursor *part, const char *start, unsigned amounts, pour_hangs *h);

/* A clause of this kind; *taken: it was one. amounts: dimensions of 'at most'. */
bool pour_hangs_clause(const action_reader *r, cursor *part, unsigned amounts, pour_hangs *h, boil_action *a, bool *taken);

/* All of it together: a clause without an effect is a mistake. */
bool pour_hangs_settle(const cursor *place, const pour_hangs *h, const boil_action *a);

/* "; until the level is 34.0 in; only while it boils" */
void pour_hangs_add(const action_view *v, action_text *t);

/* How it ended: "the gauge shows it" */
const char *pour_hangs_end_of(boil_pour_end end);

#endif
