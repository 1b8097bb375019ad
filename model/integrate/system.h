/* integrate/system.h -- a system of ordinary differential equations, y' = f(t, y), and what is known of how it hangs together. It
   knows nothing of baths. */
#ifndef BOIL_INTEGRATE_SYSTEM_H
#define BOIL_INTEGRATE_SYSTEM_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"

#define BOIL_SYSTEM_LEADS_MAX 16
#define BOIL_SYSTEM_FOLLOWERS_MAX 2
#define BOIL_SYSTEM_BLOCK_MAX 4

/* Some unknowns answer faster than the solution moves. Of these the `leads` act on one another and on all others; followers go after
   what leads do by a first-order lag, and act on none; the rest stand in blocks at the end, each acting on itself and on the leads
   alone. Sums only gather what the others do: no rate depends on them. */
typedef struct {
    size_t unknowns;
    boil_outcome (*rates)(double t, const double y[], double dydt[], void *context); /* BOIL_OK, or a failure code */
    void *context;
    const double *size; /* typical magnitude of each unknown, > 0; kept by the caller */
    size_t sums_first, sums_end;
    size_t leads, lead[BOIL_SYSTEM_LEADS_MAX];
    size_t followers, follower[BOIL_SYSTEM_FOLLOWERS_MAX];
    double lag_s[BOIL_SYSTEM_FOLLOWERS_MAX]; /* of each follower, > 0 */
    size_t amount, content; /* an amount, and what all of it holds: rates depend on what a unit of it holds. The same: there are none */
    double amount_least;    /* of less that is not so */
    size_t blocks_first;    /* from here to the end; `unknowns`: there are none */
    size_t (*block)(size_t number,
                    void *context); /* its unknowns, 1 to BOIL_SYSTEM_BLOCK_MAX; 0: there are no more. NULL: none */
    /* How a block's rates move with its own unknowns, own[i * BOIL_SYSTEM_BLOCK_MAX + k] of rate i by unknown k, and what it takes by
       each of them: the others know of blocks the sum of that alone. NULL: by looks */
    void (*slopes)(size_t number, double t, const double y[], double own[], double takes[], void *context);
} boil_system;

/* False: the rates refuse this state, or are not finite. */
bool boil_system_rates(const boil_system *s, double t, const double y[], double dydt[]);

size_t boil_system_block(const boil_system *s, size_t number); /* its unknowns; 0: there are no more */

#endif
