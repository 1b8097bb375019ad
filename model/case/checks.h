/* case/checks.h -- whether what a caller hands over can be worked with at all: pointers that are there, numbers that are finite
   and within the ranges that boilback.h says. */
#ifndef BOIL_CASE_CHECKS_H
#define BOIL_CASE_CHECKS_H

#include "boilback.h"

bool boil_check_plant(const boil_plant *p);
bool boil_check_action(const boil_action *a);
bool boil_check_schedule(const boil_schedule *s); /* in the order of time, too */
bool boil_check_options(const boil_run_options *o);
bool boil_check_case(const boil_plant *p, const boil_schedule *s, const boil_run_options *o); /* all three */

#endif
