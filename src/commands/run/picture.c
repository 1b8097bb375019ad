#include "commands/run/output.h"

#include "pictures/picture_frame.h"

bool run_picture(const void *answer, const output *how, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    static const picture_run_files files = {"frame.tsv", "trace.csv", "acts.tsv", "lanes.tsv"};
    picture p;
    const carried_out *o = answer;
    if (!picture_begin(&p, problem))
        return false;
    bool good = picture_run(&p, o, how->system, format, o->central.end_s, &files);
    picture_marks(&p, o, how->system, format);
    good = good && picture_draw(&p, "run.gp", format, drawn, problem);
    picture_end(&p);
    return good;
}
