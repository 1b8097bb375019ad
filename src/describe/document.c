#include "describe/document.h"

#include "base/program.h"
#include "scenario/scenario.h"

const char *const document_version[1] = {BOIL_VERSION_TEXT};
const char *const document_severities[4] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};

void document_scenario(json *j, const char *name, const void *record)
{
    const scenario *const *s = record;
    json_text(j, name, (*s)->path);
}

void document_title(json *j, const char *name, const void *record)
{
    const scenario *const *s = record;
    json_text(j, name, (*s)->title);
}
