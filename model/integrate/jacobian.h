/* integrate/jacobian.h -- how the fast unknowns of a system act on one another, A = df/dy as far as integrate/system.h names them,
   and x = (I - w A)^-1 r. By differences, one look at the rates for each lead, none for followers; of blocks that tell their own
   slopes one look for all. Blocks act on the leads and are acted on by them, not on one another; so each block is solved by itself,
   and the leads with what the blocks give back to them. Where the rates refuse the look, the column is zero: whoever solves with A
   must bear with a wrong one (integrate/ark.h).

   A is kept for some steps. Of an amount m and its content H, of which the rates know h = H/m,
       df/dH = (df/dh)/m,   df/dm = (df/dm)_h - h df/dH,                                                                   (1)
   and while df/dh and (df/dm)_h change little, these two go with m and h: a thin layer loses a tenth of itself in a step. */
#ifndef BOIL_INTEGRATE_JACOBIAN_H
#define BOIL_INTEGRATE_JACOBIAN_H

#include "integrate/system.h"

/* Doubles of room for each unknown, which the caller gives. */
#define BOIL_JACOBIAN_ROOM (3 * BOIL_SYSTEM_LEADS_MAX + 2 * BOIL_SYSTEM_BLOCK_MAX)

/* m and h of (1). */
typedef struct {
    double amount, held;
} boil_jacobian_place;

typedef struct {
    double lead[BOIL_SYSTEM_LEADS_MAX][BOIL_SYSTEM_LEADS_MAX];        /* on one another; of a row, by column */
    double follows[BOIL_SYSTEM_FOLLOWERS_MAX][BOIL_SYSTEM_LEADS_MAX]; /* of each follower, by lead */
    double factors[BOIL_SYSTEM_LEADS_MAX][BOIL_SYSTEM_LEADS_MAX];     /* L U of what I - w A leaves of the leads, ... */
    size_t pivot[BOIL_SYSTEM_LEADS_MAX];                              /* ... and the row that each pivot was taken from */
    double w;                                                         /* that it was worked out for; 0: for none */
    boil_jacobian_place at;                                           /* that A is told for */
    /* Of each unknown in a block, BOIL_SYSTEM_LEADS_MAX a row: what the leads do to it, it to the leads, and how it moves with them;
       BOIL_SYSTEM_BLOCK_MAX a row: its block on it, and the inverse of that. */
    double *by_leads, *on_leads, *with_leads, *own, *own_inverse;
} boil_jacobian;

void boil_jacobian_init(boil_jacobian *j, double *room, size_t unknowns);

/* A of another with so many unknowns, into room of one's own; what is made of it for a w is not copied. */
void boil_jacobian_copy(boil_jacobian *to, const boil_jacobian *from, size_t unknowns);

/* A at (t, y), whose rates are given; trial and dydt are room for a state and its rates. */
void boil_jacobian_take(boil_jacobian *j, const boil_system *s, double t, const double y[], const double rates[],
                        double trial[], double dydt[]);

/* The same A told for the amount and content of y: (1). */
void boil_jacobian_carry(boil_jacobian *j, const boil_system *s, const double y[]);

/* Make ready for w, in s. False: I - w A is singular. */
bool boil_jacobian_factor(boil_jacobian *j, const boil_system *s, double w);

/* r in place becomes x; unknowns that are neither leads nor in a block are left as they are. */
void boil_jacobian_solve(const boil_jacobian *j, const boil_system *s, double x[]);

/* Rate, 1/s, at which each unknown answers to itself: the diagonal of A; 0 where A says nothing. */
void boil_jacobian_own(const boil_jacobian *j, const boil_system *s, double own[]);

#endif
