/* plan/decoder.h -- from an order of dips to a timetable: each dip goes in as early as its limits allow, to the whole second, in that order, by what
   plan/plan.h (1) says of the boil. A limit that no time meets is marked, not hidden, and the dip is placed all the same. */
#ifndef BOIL_PLAN_DECODER_H
#define BOIL_PLAN_DECODER_H

#include "plan/case.h"
#include "plan/hands.h"
#include "plan/order.h"
#include "plan/pours.h"

/* A decoder of one thread, and the timetable it last made. */
typedef struct {
    const boil_plan_case *of;
    boil_plan_timetable table;
    boil_plan_hanging *hanging;
    size_t hanging_count;
    size_t warm_from;    /* dips before it take no more heat */
    boil_plan_calm calm; /* since the boil's last return */
    double entered_s;    /* the last entry */
} boil_plan_decoder;

/* BOIL_OK, or BOIL_NO_MEMORY with nothing to free. */
boil_outcome boil_plan_decoder_begin(boil_plan_decoder *d, const boil_plan_case *of);
void boil_plan_decoder_free(boil_plan_decoder *d);

/* The timetable of an order of all the case's parts, which stands in d->table until the next one: made from the first dip on in which it
   differs from the order before, so the case stays as it is. */
const boil_plan_timetable *boil_plan_decode(boil_plan_decoder *d, const boil_plan_order *o);

#endif
