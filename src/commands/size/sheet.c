#include "commands/size/sheet.h"

#include <string.h>

int sheet_of(const size_answer *a, sheet *out)
{
    static void (*const groups[])(sheet * s) = {sheet_burner, sheet_floor,   sheet_heaters, sheet_exhaust,
                                                sheet_water,  sheet_standby, sheet_tank,    sheet_year};
    memset(out, 0, sizeof *out);
    out->facts.size = a;
    out->facts.scenario = a->size->scenario;
    if (a->heats.found != BOIL_WINDOW_FOUND)
        return BOIL_OK;
    int result = sheet_facts_of(a, &out->facts);
    if (result != BOIL_OK)
        return result;
    sheet_heat(out);
    for (size_t i = 0; i < sizeof groups / sizeof groups[0] && !out->facts.hood_beyond; i++)
        groups[i](out);
    return BOIL_OK;
}
