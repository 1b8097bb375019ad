#include "fuzz/mutate.h"
#include "fuzz/target.h"

size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed);

/* Ours alone, which knows what a scenario is: of bytes changed blindly hardly one in a hundred still is one. */
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed)
{
    char text[MUTATE_MAX];
    size = size < MUTATE_MAX ? size : MUTATE_MAX;
    memcpy(text, data, size);
    size = mutate(text, size, seed);
    if (size > most)
        return 0;
    memcpy(data, text, size);
    return size;
}

TARGET(run)
