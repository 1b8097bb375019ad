/* account.h -- what a run took and gave: heat, water, salts and liquid, in all, per load and per 100 lb or kg of steel;
   and what automatic water, dry salt and cold did. Only lines that apply are printed. */
#ifndef ACCOUNT_H
#define ACCOUNT_H

#include <stdio.h>

#include "outcome.h"
#include "show.h"

void account_print(const outcome *o, show_system s, FILE *to);

#endif
