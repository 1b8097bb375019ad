/* support/refused.h -- memory that is refused, once, at the first, the second, ... allocation. For tests that are linked so that the
   allocations of what they test come here (Makefile). */
#ifndef SUPPORT_REFUSED_H
#define SUPPORT_REFUSED_H

#include "support/close.h"

#include <stdatomic.h>
#include <stdbool.h>
#include <stdlib.h>

#include "boilback.h"

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void __real_free(void *old);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);
void __wrap_free(void *old);

static const long refusal_never = -1;

/* What the functions that stand for malloc and its like have to know, of whichever thread calls them. */
static struct {
    atomic_long left; /* allocations until the one that is refused; below 0: none is */
    atomic_bool refused;
    atomic_long held; /* not freed yet */
} refusal = {-1, false, 0};

static bool refusal_now(void)
{
    if (refusal.left < 0 || refusal.left-- != 0)
        return false;
    refusal.refused = true;
    return true;
}

static void *refusal_counted(void *block)
{
    refusal.held += block != NULL ? 1 : 0;
    return block;
}

void *__wrap_malloc(size_t size)
{
    return refusal_now() ? NULL : refusal_counted(__real_malloc(size));
}

void *__wrap_calloc(size_t count, size_t size)
{
    return refusal_now() ? NULL : refusal_counted(__real_calloc(count, size));
}

void *__wrap_realloc(void *old, size_t size)
{
    if (refusal_now())
        return NULL;
    return old == NULL ? refusal_counted(__real_malloc(size)) : __real_realloc(old, size);
}

void __wrap_free(void *old)
{
    refusal.held -= old != NULL ? 1 : 0;
    __real_free(old);
}

/* The n-th, for every n up to some dozens, and from there on one in as many as `dense` tells: until nothing is refused. */
static inline void refuse_each(boil_outcome (*ask)(void), long dense)
{
    long n = 0, times = 0;
    for (;; n += 1 + n / dense, times++) {
        const long held = refusal.held;
        refusal.left = n;
        refusal.refused = false;
        boil_outcome outcome = ask();
        refusal.left = refusal_never;
        if (refusal.held != held)
            fail_msg("allocation %ld refused: %ld blocks are left behind", n, refusal.held - held);
        if (!refusal.refused) {
            assert_int_equal(outcome, BOIL_OK);
            break;
        }
        if (outcome != BOIL_NO_MEMORY)
            fail_msg("allocation %ld refused: the answer is %d", n, outcome);
    }
    assert_true(times > 0);
    print_message("%ld refused of about %ld\n", times, n);
}

#endif
