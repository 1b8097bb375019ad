#include "cli/output.h"

#include <string.h>

#include "base/program.h"
#include "base/words.h"

bool plot_read(const char *path, plot *p)
{
    *p = (plot){.path = path};
    if (path == NULL || picture_format_of(path, &p->format))
        return true;
    return program_complain("--plot: the file must end in .svg, .png or .pdf, got '%s'", words_quoted(path, strlen(path)).text);
}

bool plot_is_terminal(const plot *p)
{
    return p->path != NULL && p->format == PICTURE_TERMINAL;
}

bool plot_failed(const plot *p, const picture_problem *problem)
{
    return program_complain("could not draw '%s': %s", p->path, problem->text);
}

bool plot_save(const plot *p, picture_drawn *drawn)
{
    bool good = picture_save(drawn, p->path);
    picture_forget(drawn);
    return good;
}
