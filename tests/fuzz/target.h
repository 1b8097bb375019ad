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

#define TARGET(name)                                                                                                           \
    int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)                                                               \
    {                                                                                                                          \
        fuzz_##name(data, size);                                                                                               \
        return 0;                                                                                                              \
    }

#endif
