#include "actions/action.h"
#include "commands/check/output.h"
#include "describe/listing.h"
#include "describe/proof.h"
#include "describe/remarks.h"
#include "describe/report.h"

static size_t actions_of(const scenario *s, const action_type *type)
{
    size_t n = 0;
    for (size_t i = 0; i < s->schedule.count; i++)
        n += action_type_of(s->schedule.actions[i].kind) == type;
    return n;
}

typedef TEXT_OF(600) check_head;

/* ", 2 of salts", where there are any. */
static void add_others(const scenario *s, check_head *h)
{
    const action_type *type;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++) {
        size_t n = actions_of(s, type);
        if (type->group == ACTION_ADDITION && type != &action_water && n > 0)
            TEXT_ADD(h->text, ", %zu of %s", n, type->keyword);
    }
}

void check_report(const void *answer, const output *o, FILE *to)
{
    const checked *c = answer;
    const scenario *s = &c->scenario;
    check_head head = {""};
    (void)o;
    TEXT_ADD(head.text, "%s: no mistakes found; ", text_plain(s->path).text);
    if (s->jobs.count > 0)
        TEXT_ADD(head.text, "%s that nobody has planned yet; ", format_count(s->jobs.count, "job", "jobs").text);
    TEXT_ADD(head.text, "%s and %s of water", format_count(actions_of(s, &action_load), "load", "loads").text,
             format_count(actions_of(s, &action_water), "addition", "additions").text);
    add_others(s, &head);
    report_verdict(to, "%s in %s from %s", head.text, format_duration(s->schedule.duration_s).text,
                   format_clock(s->start_s, 0).text);
    fputc('\n', to);
    remarks r = remarks_of(s);
    for (size_t i = 0; i < r.count; i++)
        report_paragraph(to, "Remark: %s.", r.list[i].text);
    if (r.count > 0)
        fputc('\n', to);
    listing_print(s, to);
    if (s->lesson.given)
        proof_print(s, &c->proof, to);
    fputc('\n', to);
    report_uncertainty(&s->plant.charge, UNITS_SI, to);
    report_caution(to);
}
