#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "commands/run/output.h"
#include "findings/belongs.h"

typedef struct {
    const char *finding;
    bool possible;
    size_t act, line;
} belonging;

/* clang-format off */
#define RECORD belonging
const field run_belongs_fields[] = {
    TEXT("finding", finding, "its id"), BOOL("possible", possible, "of the list 'possible', not of 'findings'"),
    COUNT("act", act, "that it comes of, in 'acts', the first being 0"),
    COUNT("line", line, "on which that stands, in the scenario or its run sheet; one with 'every' stands for many acts"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void write_list(json *j, const carried_out *o, const boil_findings *f, bool possible, bool acts[])
{
    const scenario *s = o->scenario;
    for (size_t i = 0; i < f->count; i++) {
        memset(acts, 0, s->schedule.count * sizeof *acts);
        (void)boil_finding_belongs(&s->plant, &s->schedule, &o->central, &f->list[i], acts);
        for (size_t k = 0; k < s->schedule.count; k++) {
            const belonging b = {f->list[i].id, possible, k, s->wording.lines[s->wording.line_of[k]].line};
            if (acts[k])
                json_record(j, NULL, run_belongs_fields, &b);
        }
    }
}

void run_belongs(json *j, const char *name, const void *record)
{
    const carried_out *o = record;
    bool *acts = memory_needed(calloc(o->scenario->schedule.count + 1, sizeof *acts));
    json_list(j, name);
    if (acts != NULL) {
        write_list(j, o, &o->found, false, acts);
        write_list(j, o, &o->possible, true, acts);
    }
    json_close(j);
    free(acts);
}
