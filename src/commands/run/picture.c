#include "commands/run/output.h"

#include "describe/trace.h"
#include "pictures/picture_frame.h"

bool run_picture(const void *answer, const output *how, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    picture_run r;
    const carried_out *o = answer;
    const picture_input inputs[] = {{"frame.tsv", picture_frame, &r},  {"trace.csv", trace_csv, &r.trace},
                                    {"acts.tsv", picture_actions, &r}, {"lanes.tsv", picture_lanes, &r},
                                    {"marks.tsv", picture_marks, &r},  {0}};
    bool good = picture_run_begin(&r, o, how->system, format, o->central.end_s) &&
                picture_draw("run.gp", format, inputs, drawn, problem);
    picture_run_end(&r);
    return good;
}
