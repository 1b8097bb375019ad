#include "describe/severity.h"

static const char *colour_of(boil_severity s)
{
    switch (s) {
    case BOIL_NOTICE:
        return "\033[1;34m";
    case BOIL_CAUTION:
        return "\033[1;33m";
    case BOIL_WARNING:
        return "\033[1;35m";
    case BOIL_DANGER:
        break;
    }
    return "\033[1;37;41m";
}

void severity_print(FILE *to, boil_severity s, bool colour)
{
    if (colour)
        fprintf(to, "%s%s\033[0m", colour_of(s), boil_severity_word(s));
    else
        fputs(boil_severity_word(s), to);
}
