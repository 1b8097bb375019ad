/* describe/severity.h -- signal words on paper and on a terminal. */
#ifndef DESCRIBE_SEVERITY_H
#define DESCRIBE_SEVERITY_H

#include <stdbool.h>
#include <stdio.h>

#include "analysis/findings.h"

/* The word, in its colour where one is wanted [ANSI Z535: red, orange, yellow, blue; a terminal has no orange]. */
void severity_print(FILE *to, boil_severity s, bool colour);

#endif
