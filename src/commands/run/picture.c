#include "commands/run/output.h"

#include "pictures/picture_frame.h"

bool run_picture(const carried_out *o, const boil_history *trace, unit_system s, picture_format format, picture_drawn *drawn,
                 picture_problem *problem)
{
    picture p;
    *drawn = (picture_drawn){0};
    if (!picture_begin(&p, problem))
        return false;
    picture_frame(&p, o, s, format, o->scenario->title, "frame.tsv");
    picture_trace(&p, trace, "trace.csv");
    picture_actions(&p, o, format, o->central.end_s, "acts.tsv", "lanes.tsv");
    picture_marks(&p, o, s, format);
    bool good = picture_draw(&p, "run.gp", format, drawn, problem);
    picture_end(&p);
    return good;
}
