#include "boilback.h"

const char *boil_version(void)
{
    return BOIL_VERSION_TEXT;
}

int boil_version_number(void)
{
    return BOIL_VERSION_NUMBER;
}

const char *boil_outcome_text(boil_outcome outcome)
{
    switch (outcome) {
    case BOIL_OK:
        return "done";
    case BOIL_OUT_OF_RANGE:
        return "beyond the range of a correlation";
    case BOIL_NO_ROOT:
        return "there is no such answer";
    case BOIL_NO_MEMORY:
        return "memory was refused";
    case BOIL_BAD_INPUT:
        return "the input makes no sense";
    case BOIL_NOT_FINITE:
        return "a rate came out infinite or not a number";
    }
    return "no outcome of this library";
}
