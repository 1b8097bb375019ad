/* describe/setting_words.h -- a setting's value in words, as what it means and not as it was written. */
#ifndef DESCRIBE_SETTING_WORDS_H
#define DESCRIBE_SETTING_WORDS_H

#include "base/format.h"
#include "scenario/scenario.h"

typedef struct {
    char text[600];
} setting_words;

/* "0.25 in", "280.0 to 295.0 degF", "80 % NaOH, 15 % NaNO3, 5 % NaNO2", "gas", "left to the model". */
setting_words setting_words_of(const scenario *s, size_t index, unit_system system);

#endif
