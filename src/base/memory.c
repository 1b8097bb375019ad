#include "base/memory.h"

#include <errno.h>
#include <stdatomic.h>
#include <stdlib.h>

#include "boilback.h"

/* Of the whole program: writers are called through tables, and hand nothing back. */
static atomic_bool refused;

void memory_refused(void)
{
    atomic_store(&refused, true);
}

bool memory_was_refused(void)
{
    return atomic_load(&refused);
}

void *memory_needed(void *allocated)
{
    if (allocated == NULL)
        memory_refused();
    return allocated;
}

bool memory_good(int outcome)
{
    if (outcome == BOIL_NO_MEMORY)
        memory_refused();
    return outcome == BOIL_OK;
}

FILE *memory_stream(char **text, size_t *size)
{
    *text = NULL;
    errno = 0; /* what grows the stream sets it, and leaves no other trace */
    return memory_needed(open_memstream(text, size));
}

bool memory_stream_close(FILE *to, char **text)
{
    bool good = to != NULL && errno != ENOMEM;
    good = to != NULL && fclose(to) == 0 && *text != NULL && good; /* its last step may be refused its memory, and says nothing */
    if (good)
        return true;
    memory_refused();
    free(*text);
    *text = NULL;
    return false;
}
