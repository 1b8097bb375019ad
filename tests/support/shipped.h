/* support/shipped.h -- every scenario that is shipped, read and handed to a test. */
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
    char path[300];
    messages m;
    snprintf(path, sizeof path, "scenarios/%s", name);
    messages_init(&m);
    assert_int_equal(scenario_read(path, s, &m), 0);
    messages_free(&m);
}

/* Of all of them each `every`th; how many there are in all. */
static inline size_t each_shipped(void (*test)(const char *name, const scenario *s), size_t every)
{
    DIR *folder = opendir("scenarios");
    assert_non_null(folder);
    size_t count = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        const char *ending = strrchr(entry->d_name, '.');
        if (ending == NULL || strcmp(ending, ".bath") != 0 || count++ % every != 0)
            continue;
        scenario s;
        read_shipped(entry->d_name, &s);
        test(entry->d_name, &s);
        scenario_free(&s);
    }
    closedir(folder);
    return count;
}

#endif
