/* support/shipped.h -- every scenario that is shipped, or every lesson, read and handed to a test. */
#ifndef SUPPORT_SHIPPED_H
#define SUPPORT_SHIPPED_H

#include <dirent.h>
#include <stdio.h>
#include <string.h>

#include "support/close.h"

#include "reading/source.h"
#include "scenario/scenario.h"

static inline void read_shipped(const char *name, scenario *s)
{
    char path[320];
    messages m;
    snprintf(path, sizeof path, "scenarios/%s", name);
    messages_init(&m);
    assert_int_equal(scenario_read(path, s, &m), 0);
    messages_free(&m);
}

/* Of all in the folder below scenarios (its name ends with a slash, or is empty) each `every`th; how many there are in all. */
static inline size_t each_shipped_in(const char *below, void (*test)(const char *name, const scenario *s), size_t every)
{
    char path[300];
    snprintf(path, sizeof path, "scenarios/%s", below);
    DIR *folder = opendir(path);
    assert_non_null(folder);
    size_t count = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        const char *ending = strrchr(entry->d_name, '.');
        if (ending == NULL || strcmp(ending, ".bath") != 0 || count++ % every != 0)
            continue;
        scenario s;
        snprintf(path, sizeof path, "%s%s", below, entry->d_name);
        read_shipped(path, &s);
        test(path, &s);
        scenario_free(&s);
    }
    closedir(folder);
    return count;
}

static inline size_t each_shipped(void (*test)(const char *name, const scenario *s), size_t every)
{
    return each_shipped_in("", test, every);
}

static inline size_t each_lesson(void (*test)(const char *name, const scenario *s))
{
    return each_shipped_in("lessons/", test, 1);
}

#endif
