/* commands/run/account.h -- what a run took and gave: heat, water, salts and liquid, in all, per load and per 100 lb or kg of
   steel; and what automatic water, dry salt and cold did. Only what applies is in it. */
#ifndef COMMANDS_RUN_ACCOUNT_H
#define COMMANDS_RUN_ACCOUNT_H

#include <stdio.h>

#include "base/format.h"
#include "describe/carried_out.h"

#define ACCOUNT_ROWS_MAX 16
#define ACCOUNT_TOLD_MAX 8

typedef struct {
    const char *what;                            /* begins with a blank: part of the row above it */
    formatted_text total, per_load, per_hundred; /* the last two are empty without loads */
} account_row;

typedef struct {
    bool has_loads;
    const char *hundred; /* "per 100 lb of steel" */
    account_row rows[ACCOUNT_ROWS_MAX];
    size_t rows_count;
    char told[ACCOUNT_TOLD_MAX][400]; /* sentences */
    size_t told_count;
} account;

account account_of(const carried_out *o, unit_system s);
void account_print(const carried_out *o, unit_system s, FILE *to);

#endif
