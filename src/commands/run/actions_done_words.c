#include "commands/run/parts.h"

#include <math.h>

#include "actions/load_stay.h"

static action_view view_of(const carried_out *o, const run_action *r, unit_system s)
{
    action_view v = action_view_of(o->scenario, r->action, s == UNITS_US ? ACTION_US : ACTION_SI);
    v.many = r->times > 1;
    if (!isnan(carried_out_done_s(o, r->action)))
        v.time_s = carried_out_done_s(o, r->action);
    v.load = r->line.load;
    v.addition = r->line.addition;
    return v;
}

const action_type *run_action_type(const carried_out *o, const run_action *r)
{
    return r->lifting ? &action_lift : action_type_of(o->scenario->schedule.actions[r->action].kind);
}

action_text run_action_clock(const carried_out *o, const run_action *r)
{
    double start = o->scenario->start_s;
    action_text t = {""};
    const boil_load *l = action_load_of(&o->scenario->schedule.actions[r->action]);
    bool found = r->lifting && l->at_boil; /* by the run: to the second nobody knows it */
    TEXT_ADD(t.text, "%s", (found ? format_clock(start, r->time_s) : format_clock_exact(start, r->time_s)).text);
    if (r->times == 1)
        return t;
    double every_s = (r->last_s - r->time_s) / (double)(r->times - 1);
    TEXT_ADD(t.text, " to %s, every %s", format_clock_exact(start, r->last_s).text, format_duration(every_s).text);
    return t;
}

action_text run_action_done(const carried_out *o, const run_action *r)
{
    const action_type *type = run_action_type(o, r);
    action_view v = view_of(o, r, UNITS_US);
    action_name words = action_name_of(o->scenario, r->action);
    const char *verb = type->verb_of != NULL ? type->verb_of(v.action) : type->verb != NULL ? type->verb : "";
    action_text t = {""};
    if (r->lifting)
        TEXT_ADD(t.text, "%s %s", type->keyword, action_name_of_load(&words));
    else
        TEXT_ADD(t.text, "%s%s", verb, words.text);
    if (r->times > 1)
        TEXT_ADD(t.text, ", %zu times", r->times);
    return t;
}

action_text run_action_details(const carried_out *o, const run_action *r, unit_system s)
{
    const action_type *type = run_action_type(o, r);
    action_view v = view_of(o, r, s);
    action_text t = {""};
    if (type->details != NULL)
        type->details(&v, &t);
    if (r->lifting)
        load_stay_lift_add(&v, &t);
    if (type->pace != NULL)
        type->pace(&v, &t);
    if (!r->lifting)
        action_wait_add(&v, &t);
    return t;
}

action_text run_action_expected(const carried_out *o, const run_action *r, unit_system s)
{
    const action_type *type = run_action_type(o, r);
    action_view v = view_of(o, r, s);
    action_text t = {""};
    if (o->central.end == BOIL_RUN_DONE && isnan(carried_out_done_s(o, r->action))) {
        TEXT_ADD(t.text, "Not done in the run: %s", carried_out_why_not(o, r->action));
        return t;
    }
    if (type->expected == NULL)
        return t;
    if (v.load == NULL && v.addition == NULL) {
        TEXT_ADD(t.text, "The run stopped before this");
        return t;
    }
    if (v.many)
        TEXT_ADD(t.text, "The worst, at %s: ", carried_out_clock(o, r->line.time_s).text);
    type->expected(&v, &t);
    if (r->line.after_overflow)
        TEXT_ADD(t.text, " (after overflow: not a prediction)");
    return t;
}

const char *run_action_caution(const carried_out *o, const run_action *r)
{
    const action_type *type = run_action_type(o, r);
    action_view v = view_of(o, r, UNITS_US);
    if (type->caution_of != NULL)
        return type->caution_of(&v);
    return type->caution_off != NULL && !v.action->is.on ? type->caution_off : type->caution;
}

const char *run_action_warning(const carried_out *o, const run_action *r, boil_severity *severity)
{
    const action_type *type = run_action_type(o, r);
    const boil_load_result *load = r->line.load;
    const boil_addition_result *addition = r->line.addition;
    bool quiet_before = load != NULL ? load->was_quiet : addition != NULL && addition->was_quiet_before;
    bool quiet = quiet_before || (addition != NULL && addition->was_quiet);
    *severity = quiet_before ? type->quiet_severity : BOIL_SEVERITY_WARNING;
    return quiet_before ? type->when_quiet : quiet ? type->when_it_stops : NULL;
}
