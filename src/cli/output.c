#include "cli/output.h"

#include <string.h>

#include "base/memory.h"
#include "base/patience.h"
#include "base/program.h"
#include "base/words.h"
#include "files/whole_file.h"

/* The picture stands in for the report. */
static bool is_terminal(const plot *p)
{
    return p->path != NULL && p->format == PICTURE_TERMINAL;
}

static void plot_look(plot *p)
{
    picture_problem problem;
    p->impossible = p->path != NULL && !picture_can_be(&problem);
    if (p->impossible)
        program_complain("could not draw '%s': %s", p->path, problem.text);
}

bool output_agrees(output *o, const given *g)
{
    const char *path = o->plot.path;
    if (path != NULL && !picture_format_of(path, &o->plot.format))
        return program_complain("--plot: the file must end in .svg, .png or .pdf, got '%s'",
                                words_quoted(path, strlen(path)).text);
    const struct {
        bool there;
        const char *words;
    } outputs[] = {{o->json, "--json"},
                   {whole_file_is_stdout(o->csv), "--csv -"},
                   {is_terminal(&o->plot), "--plot -"},
                   {whole_file_is_stdout(o->html), "--html -"},
                   {whole_file_is_stdout(o->write), "--write -"}};
    const char *first = NULL;
    for (size_t i = 0; i < sizeof outputs / sizeof outputs[0]; i++) {
        if (outputs[i].there && first != NULL)
            return program_complain("%s and %s would both write to standard output", first, outputs[i].words);
        if (outputs[i].there)
            first = outputs[i].words;
    }
    o->colour = program_colour(stdout);
    if (!output_files_agree(o, g))
        return false;
    plot_look(&o->plot);
    return true;
}

static bool csv_write(const output_writers *w, const output *o, const void *answer)
{
    whole_file f;
    if (!whole_file_open(&f, o->csv))
        return false;
    w->csv(answer, f.to);
    return whole_file_close(&f);
}

static bool plot_write(const output_writers *w, const output *o, const void *answer)
{
    picture_drawn drawn = {0};
    picture_problem problem = {"out of memory"};
    if (o->plot.impossible)
        return false;
    if (!w->draw(answer, o, o->plot.format, &drawn, &problem))
        return !memory_was_refused() && program_complain("could not draw '%s': %s", o->plot.path, problem.text);
    if (is_terminal(&o->plot) && w->above != NULL)
        w->above(answer, o, stdout);
    bool good = picture_save(&drawn, o->plot.path);
    picture_forget(&drawn);
    return good;
}

/* A page that has a picture is whole without it: it says why there is none. */
static bool html_write(const output_writers *w, const output *o, const void *answer)
{
    picture_drawn drawn = {0};
    picture_problem problem = {"out of memory"};
    whole_file f;
    if (w->draw != NULL && !w->draw(answer, o, PICTURE_SVG, &drawn, &problem) && !memory_was_refused())
        program_complain("no picture in '%s': %s", o->html, problem.text);
    bool good = whole_file_open(&f, o->html);
    if (good)
        w->html(answer, o, &drawn, &problem, f.to);
    picture_forget(&drawn);
    return good && whole_file_close(&f);
}

int output_write(const output_writers *w, const output *o, const void *answer, int status)
{
    patience_end();
    bool rows = o->csv == NULL || csv_write(w, o, answer);
    bool drawn = o->plot.path == NULL || plot_write(w, o, answer);
    bool page = o->html == NULL || html_write(w, o, answer);
    bool replaced = whole_file_is_stdout(o->csv) || whole_file_is_stdout(o->html) || whole_file_is_stdout(o->write) ||
                    (is_terminal(&o->plot) && drawn);
    if (o->json)
        json_document(w->json->fields, answer, stdout);
    else if (w->text != NULL && !replaced)
        w->text(answer, o, stdout);
    return rows && drawn && page ? status : STATUS_STOPPED;
}
