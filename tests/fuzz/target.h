/* fuzz/target.h -- what a target has beside the function it tries [libFuzzer's interface]: `make fuzz`. */
#ifndef FUZZ_TARGET_H
#define FUZZ_TARGET_H

#include "fuzz/targets.h"

int LLVMFuzzerInitialize(int *count, char ***words);
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void target_end(void)
{
    fprintf(stderr, "tried %lu, accepted %lu\n", fuzz_count.tried, fuzz_count.accepted);
    fuzz_end();
}

int LLVMFuzzerInitialize(int *count, char ***words)
{
    (void)count;
    (void)words;
    fuzz_begin();
    atexit(target_end);
    return 0;
}

size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t most);
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed);

/* Most changes by one that knows what its input is, of bytes changed blindly hardly one in a hundred still being that; some blindly all
   the same. */
#define CHANGED_BY(change)                                                                                                     \
    size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed)                                     \
    {                                                                                                                          \
        char text[MUTATE_MAX];                                                                                                 \
        if (seed % 8 == 0)                                                                                                     \
            return LLVMFuzzerMutate(data, size, most);                                                                         \
        size = size < MUTATE_MAX ? size : MUTATE_MAX;                                                                          \
        memcpy(text, data, size);                                                                                              \
        size = change(text, size, seed);                                                                                       \
        size = size < most ? size : most;                                                                                      \
        memcpy(data, text, size);                                                                                              \
        return size;                                                                                                           \
    }

#define TARGET(name)                                                                                                           \
    int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)                                                               \
    {                                                                                                                          \
        fuzz_##name(data, size);                                                                                               \
        return 0;                                                                                                              \
    }

#endif
