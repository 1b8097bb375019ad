#include "commands/compare/output.h"

#include <math.h>

#include "pictures/picture_frame.h"

bool compare_picture(const compare_answer *c, const boil_history *trace_a, const boil_history *trace_b, unit_system s,
                     picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    picture p;
    double end = fmax(c->a->central.end_s, c->b->central.end_s);
    *drawn = (picture_drawn){0};
    if (!picture_begin(&p, problem))
        return false;
    picture_frame(&p, c->a, s, format, c->a->scenario->title, "frame-a.tsv");
    picture_frame(&p, c->b, s, format, c->b->scenario->title, "frame-b.tsv");
    picture_trace(&p, trace_a, "trace-a.csv");
    picture_trace(&p, trace_b, "trace-b.csv");
    picture_actions(&p, c->a, format, end, "acts-a.tsv", "lanes-a.tsv");
    picture_actions(&p, c->b, format, end, "acts-b.tsv", "lanes-b.tsv");
    bool good = picture_draw(&p, "compare.gp", format, drawn, problem);
    picture_end(&p);
    return good;
}
