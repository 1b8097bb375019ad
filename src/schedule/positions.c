#include "schedule/positions.h"

#include <math.h>

#include "base/words.h"

/* "'rack 1' until 0:41": until it is out. */
static void add_holder(positions_text *t, const load_names *names, const moment_frame *frame, const boil_action *load,
                       double out_s)
{
    const char *name = load_names_word(names, load->name);
    if (name[0] != '\0')
        TEXT_ADD(t->text, "'%.60s'", text_plain(name).text);
    else
        TEXT_ADD(t->text, "the load of %s", moment_words(frame, load->time_s).text);
    TEXT_ADD(t->text, " until %s", isinf(out_s) ? "lifted" : moment_words(frame, out_s).text);
}

static bool taken(const positions *p, size_t first, size_t end, const load_names *names, const moment_frame *frame,
                  const boil_action *load, positions_text *why)
{
    size_t count = end - first;
    if (load->position > 0)
        TEXT_ADD(why->text, "position %d is taken at ", load->position);
    else
        TEXT_ADD(why->text, count == 1   ? "the position is taken at "
                            : count == 2 ? "both positions are taken at "
                                         : "all positions are taken at ");
    TEXT_ADD(why->text, "%s", moment_words(frame, load->time_s).text);
    for (size_t i = first; i < end; i++) {
        TEXT_ADD(why->text, i == first ? ": " : ", ");
        add_holder(why, names, frame, p->in[i].load, p->in[i].out_s);
    }
    return false;
}

bool positions_take(positions *p, size_t count, const load_names *names, const moment_frame *frame, boil_action *load,
                    double lifts_s, positions_text *why)
{
    const double rounding_s = 1e-6;
    size_t asked = (size_t)load->position, first = asked > 0 ? asked - 1 : 0, end = asked > 0 ? asked : count;
    *why = (positions_text){""};
    for (size_t i = first; i < end; i++) {
        bool is_free = p->in[i].load == NULL || load->time_s >= p->in[i].out_s - rounding_s;
        bool together = !is_free && asked > 0 && p->in[i].stated && load->time_s <= p->in[i].load->time_s + rounding_s;
        if (is_free || together) {
            p->in[i].out_s = fmax(together ? p->in[i].out_s : 0, lifts_s + load->is.load.lowering_s);
            p->in[i].load = load;
            p->in[i].stated = asked > 0;
            load->position = (int)i + 1;
            return true;
        }
    }
    return taken(p, first, end, names, frame, load, why);
}
