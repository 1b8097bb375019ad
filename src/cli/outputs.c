#include "cli/outputs.h"

#include <stddef.h>

#include "base/program.h"
#include "base/whole_file.h"

bool outputs_agree(const outputs *o)
{
    const struct {
        bool there;
        const char *words;
    } all[] = {{o->json, "--json"},
               {whole_file_is_stdout(o->csv), "--csv -"},
               {plot_is_terminal(&o->plot), "--plot -"},
               {whole_file_is_stdout(o->html), "--html -"}};
    const char *first = NULL;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        if (all[i].there && first != NULL) {
            program_complain("%s and %s would both write to standard output", first, all[i].words);
            return false;
        }
        if (all[i].there)
            first = all[i].words;
    }
    return true;
}

bool outputs_leave_report(const outputs *o)
{
    return !whole_file_is_stdout(o->csv) && !plot_is_terminal(&o->plot) && !whole_file_is_stdout(o->html);
}

bool outputs_csv(const outputs *o, void (*write)(const void *answer, FILE *to), const void *answer)
{
    whole_file f;
    if (o->csv == NULL)
        return true;
    if (!whole_file_open(&f, o->csv))
        return false;
    write(answer, f.to);
    return whole_file_close(&f);
}
