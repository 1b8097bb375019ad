#include "commands/correct/output.h"

#include <math.h>

#include "analysis/pour_rate.h"
#include "base/program.h"
#include "case/grading.h"
#include "describe/listing.h"
#include "describe/report.h"

typedef struct {
    const boil_correction *p;
    const scenario *scenario;
    unit_system system;
    FILE *to;
} writing;

/* Hotter, a run finds it bailed out hot. */
static double bail_below_K(void)
{
    return boil_gradings[BOIL_FOUND_BAIL_HOT].from[BOIL_SEVERITY_CAUTION];
}

/* What helps where water finds no room or boils off, and where salts or liquid would lie, stop the boil, or boil the bath down
   before they are in. */
static const char *remedy(const correct_answer *a, bool water)
{
    if (water)
        return "less heat, or bail out first and read again";
    return a->scenario->plant.fittings.mixer_on
               ? "let it cool and fill it up by 'charge --from', or go to a lower level first"
               : "try it with the mixer on ('mixer = on' under [fittings]), or let it cool and fill it up by 'charge --from'";
}

static void refuse_pace(const correct_answer *a)
{
    const boil_correction *p = &a->plan;
    const struct {
        const char *what;
        const boil_correct_step *step;
    } steps[] = {{"do the dry salts", &p->salts}, {"does the liquid", &p->liquid}, {"does the water", &p->water}};
    for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++)
        if (steps[i].step->mass_kg > 0 && !(steps[i].step->pace.rate_kg_s > 0)) {
            program_complain("%s: at no pace %s go in well: %s. Instead, %s", a->scenario->path, steps[i].what,
                             steps[i].step->pace.limited_by, remedy(a, steps[i].step == &p->water));
            return;
        }
    program_complain("%s: what goes in well step by step does not as a whole: %s. Instead, %s", a->scenario->path, p->harm,
                     remedy(a, !(p->salts.mass_kg + p->liquid.mass_kg > 0)));
}

/* Readings that nothing is to be planned on: the first in the words in which a run finds it. */
static bool refuse_reading(const correct_answer *a, unit_system s)
{
    const boil_correction *p = &a->plan;
    const char *path = a->scenario->path;
    if (p->end == BOIL_CORRECT_NEARLY_DRY)
        program_complain("%s: at %s the bath is nearly dry, or may be: %s salts. Heat off. No water on it: let it cool, then "
                         "make it up by plan: 'charge --from'",
                         path, SHOWN(s, TEMPERATURE, p->asked.reads_K + p->asked.uncertain_K),
                         SHOWN(s, FRACTION, fmax(p->salt_fraction, p->salt_fraction_high)));
    else if (p->end == BOIL_CORRECT_NO_FULL_BOIL)
        program_complain(
            "%s: %s is so far below the band, which begins at %s, that it was surely not at a full boil; a quiet bath "
            "is cooler, not weaker. Add nothing: get a full boil all over, and read again. If it does boil all "
            "over there, let it boil down, adding nothing, and read again",
            path, SHOWN(s, TEMPERATURE, p->asked.reads_K),
            SHOWN(s, TEMPERATURE, a->scenario->plant.limits.boiling_point_low_K));
    else
        return false;
    return true;
}

void correct_refuse(const correct_answer *a, unit_system s)
{
    const boil_correction *p = &a->plan;
    const char *path = a->scenario->path;
    if (refuse_reading(a, s))
        return;
    if (p->end == BOIL_CORRECT_HOT_LIQUID)
        program_complain(
            "%s: of %.4g %% salts these are liquid only from %s up, hotter than the bath boils: take weaker liquid "
            "by --liquid-strength, or dry salts",
            path, 100 * p->asked.liquid_fraction, SHOWN(s, TEMPERATURE, p->asked.liquid_K));
    else if (p->end == BOIL_CORRECT_NO_BAILING)
        program_complain(
            "%s: some of it has to be bailed out, which is done under %s, and it does not cool to that, or with this "
            "heat does not boil again after it: more heat, or a lower level in the scenario",
            path, SHOWN(s, TEMPERATURE, bail_below_K()));
    else if (p->end == BOIL_CORRECT_NO_BATH)
        program_complain("%s: no bath of these salts that is known of boils at %s there: read again, and look at altitude or "
                         "pressure, and at the blend",
                         path, SHOWN(s, TEMPERATURE, p->asked.reads_K));
    else if (p->end == BOIL_CORRECT_NO_SALTS)
        program_complain("%s: its bath is plain water, whose boiling point says nothing of its strength: name the bath that it "
                         "shall be in [bath], such as %s and 'boiling point = 285 degF'",
                         path, SCENARIO_SALTS_SUCH_AS);
    else if (p->end == BOIL_CORRECT_NO_BOIL)
        program_complain("%s: the heat does not keep it boiling at %s: a reading taken then says nothing of its strength, and "
                         "no water goes onto a bath that does not boil. More heat first",
                         path, SHOWN(s, TEMPERATURE, p->asked.reads_K));
    else if (p->end == BOIL_CORRECT_NO_FREEBOARD)
        program_complain(
            "%s: at no level does the freeboard of %s stay with the next load in: a lighter load, less heat or a deeper tank",
            path, SHOWN(s, LENGTH, a->scenario->plant.limits.freeboard_m));
    else if (p->end == BOIL_CORRECT_TOO_WEAK)
        program_complain("%s: liquid of %s brings so much water that the bath would first have to boil down beyond %s: use "
                         "stronger liquid or dry salts",
                         path, SHOWN(s, FRACTION, p->asked.liquid_fraction),
                         SHOWN(s, TEMPERATURE, fmax(a->scenario->plant.limits.boiling_point_high_K, p->asked.reads_K)));
    else
        refuse_pace(a);
}

static void verdict(const writing *w)
{
    const boil_correction *p = w->p;
    bool anything = p->done_s > 0;
    const char *joint = "";
    char text[400] = "";
    if (p->bail != BOIL_BAIL_NOTHING) {
        TEXT_ADD(text, "Heat off; cool under %s, %s; bail out %s; heat on, the boil back, read again",
                 SHOWN(w->system, TEMPERATURE, bail_below_K()), format_duration(p->cool_s).text,
                 SHOWN(w->system, VOLUME, p->bail_m3));
        joint = "; then ";
    }
    if (p->boil_down_s > 0) {
        TEXT_ADD(text, "%sboil down for %s", joint, format_duration(p->boil_down_s).text);
        joint = ", then ";
    }
    if (p->water.mass_kg > 0) {
        TEXT_ADD(text, "%s%s of water over %s", joint,
                 SHOWN(w->system, VOLUME, p->water.mass_kg / boil_water_density(p->asked.added_K)),
                 format_duration(p->water.over_s).text);
        joint = ", then ";
    }
    const boil_correct_step *makeup = p->salts.mass_kg > 0 ? &p->salts : &p->liquid;
    if (makeup->mass_kg > 0)
        TEXT_ADD(text, "%s%s of %s over %s", joint, SHOWN(w->system, MASS, makeup->mass_kg),
                 makeup == &p->salts ? "dry salts" : "liquid", format_duration(makeup->over_s).text);
    if (anything)
        TEXT_ADD(text, ": at %s after %s", SHOWN(w->system, TEMPERATURE, p->end_K),
                 format_duration(p->back_s + p->done_s).text);
    else
        TEXT_ADD(text, "%s", p->bail != BOIL_BAIL_NOTHING ? "; nothing to add" : "Nothing to add: it is at the set point");
    report_verdict(w->to, "%s", text);
}

/* A level that is given up, so that nothing is bailed out. */
static void lowered(const writing *w)
{
    const boil_correction *p = w->p;
    if (p->bail != BOIL_BAIL_NOTHING)
        return;
    if (p->lowered_from_m > 0)
        report_paragraph(w->to,
                         "It comes to %s, not to the %s wanted: with more, what goes in would at no pace leave the freeboard. "
                         "So nothing has to be bailed out.",
                         SHOWN(w->system, LENGTH, p->end_still_m), SHOWN(w->system, LENGTH, p->wanted_level_m));
    else if (p->end_still_m < p->wanted_level_m - 5e-3)
        report_paragraph(w->to, "It comes to %s, not to the %s wanted: higher, the next load would not leave the freeboard.",
                         SHOWN(w->system, LENGTH, p->end_still_m), SHOWN(w->system, LENGTH, p->wanted_level_m));
}

static void bath(const writing *w)
{
    const boil_correction *p = w->p;
    char range[140] = "";
    if (p->asked.uncertain_K > 0)
        snprintf(range, sizeof range, "%s to %s, by the reading", SHOWN(w->system, FRACTION, p->salt_fraction_low),
                 SHOWN(w->system, FRACTION, p->salt_fraction_high));
    fputs("\nWhat there is\n", w->to);
    listing_line(w->to, "boils at", DIM_TEMPERATURE, p->asked.reads_K, "as read");
    listing_line(w->to, "salts by mass", DIM_FRACTION, p->salt_fraction, range);
    listing_line(w->to, "strength", DIM_CONCENTRATION, p->strength_kg_m3, "salts per volume of hot bath");
    listing_line(w->to, "level", DIM_LENGTH, p->still_level_m,
                 p->asked.level_boiling ? "still: the swell is taken out" : "still");
    if (p->asked.level_boiling)
        listing_line(w->to, "swell", DIM_LENGTH, p->swell_m, "upper estimate: a bath that swells less is fuller than this");
    listing_line(w->to, "mass of bath", DIM_MASS, p->mass_kg, "");
    listing_line(w->to, "freeboard", DIM_LENGTH, p->freeboard_now_m,
                 p->freeboard_now_m < p->start.limits.freeboard_m ? "as it boils: below the limit" : "as it boils");
    fputs("\nWhat is wanted\n", w->to);
    listing_line(w->to, "boils at", DIM_TEMPERATURE, p->set_point_K, "as the scenario's bath");
    listing_line(w->to, "level", DIM_LENGTH, p->wanted_level_m, "still, as in the scenario");
    listing_line(w->to, "no more than", DIM_LENGTH, p->most_level_m, "still: the freeboard with the next load in");
}

#define STEPS_AT 15 /* columns */

/* A step told a moment too early would begin in the one before it. */
static void step_head(const writing *w, double start_s, const char *text)
{
    double whole_s = boil_pour_rate_minute(start_s);
    text_wrapped(w->to, text, fprintf(w->to, " [ ] %8s ", format_clock(0, whole_s).text), STEPS_AT, REPORT_WIDTH);
}

static void caution(const writing *w, const char *text)
{
    text_wrapped(w->to, text, 0, STEPS_AT, REPORT_WIDTH);
}

static void pour(const writing *w, const boil_correct_step *s, const char *what, const char *beware)
{
    char text[260], limit[200];
    if (!(s->mass_kg > 0))
        return;
    bool water = s == &w->p->water;
    unit_dimension d = water ? DIM_VOLUME : DIM_MASS;
    double per_kg = water ? 1 / boil_water_density(w->p->asked.added_K) : 1;
    snprintf(text, sizeof text, "%s of %s over %s, no faster than %s a minute",
             format_quantity(w->system, d, s->mass_kg * per_kg).text, what, format_duration(s->over_s).text,
             format_quantity(w->system, d, 60 * s->pace.rate_kg_s * per_kg).text);
    step_head(w, w->p->back_s + s->start_s, text);
    if (s->pace.limited_by != NULL)
        snprintf(limit, sizeof limit, "Faster: %s.", s->pace.limited_by);
    else
        snprintf(limit, sizeof limit, "As fast as anyone pours: it does no harm.");
    caution(w, limit);
    caution(w, beware);
}

/* Salts that fell out while it cooled lie in the way of rod, dipper and heat. */
static void cold_salts(const writing *w)
{
    const boil_correction *p = w->p;
    char text[300];
    if (!(p->crystals_from_K > p->cold_K))
        return;
    snprintf(text, sizeof text,
             "DANGER: salts fall out from %s down. Stir it while it cools; feel with a rod for a crust and for salt on the "
             "floor, and no heat while there is either.",
             SHOWN(w->system, TEMPERATURE, p->crystals_from_K));
    caution(w, text);
}

static void cool(const writing *w)
{
    const boil_correction *p = w->p;
    char text[300];
    snprintf(text, sizeof text, "heat off; let it cool under %s: about %s", SHOWN(w->system, TEMPERATURE, bail_below_K()),
             format_duration(p->cool_s).text);
    step_head(w, 0, text);
    snprintf(text, sizeof text, "It will not fit: it would come to %s, and %s.", SHOWN(w->system, LENGTH, p->unbailed_level_m),
             p->bail == BOIL_BAIL_FOR_LOAD ? "the next load would not leave the freeboard"
                                           : "at no pace would the additions leave the freeboard");
    caution(w, text);
    caution(w, "Nothing goes in meanwhile: no water, no salts, no load.");
    cold_salts(w);
}

static void bail(const writing *w)
{
    const boil_correction *p = w->p;
    char text[300];
    if (p->bail == BOIL_BAIL_NOTHING)
        return;
    cool(w);
    snprintf(text, sizeof text, "bail out %s, %s of the bath", SHOWN(w->system, VOLUME, p->bail_m3),
             SHOWN(w->system, MASS, p->bail_kg));
    step_head(w, p->cool_s, text);
    caution(w,
            "Read the thermometer first. With a steel dipper, long handle, into a dry, closed steel vessel; nobody else near.");
    step_head(w, p->relight_s, "heat on, as before");
    caution(w, "Nothing goes in until it boils all over.");
    step_head(w, p->back_s, "it boils: read boiling point and level, and ask 'correct' again");
    caution(w, "What stands below is a forecast from the reading before: go by the new one.");
}

static void steps(const writing *w)
{
    const boil_correction *p = w->p;
    fputs("\nSteps, from 0:00\n", w->to);
    bail(w);
    if (p->boil_down_s > 0) {
        step_head(w, p->back_s, "boil down, adding nothing");
        caution(w, "Fumes: exhaust on. Watch the level against the heater and the parts.");
    }
    pour(w, &p->water, "water", "Only while it boils, in a thin stream; stop when the boil stops.");
    pour(w, &p->salts, "dry salts", "Sifted, never a lump; no water until they have dissolved.");
    pour(w, &p->liquid, "ready-mixed liquid", "Under the surface; stop when the boil stops.");
    step_head(w, p->back_s + p->done_s, "done: read the boiling point again");
}

static void range_line(const writing *w, const char *name, double low, double central, double high)
{
    if (low == 0 && central == 0 && high == 0)
        return;
    fprintf(w->to, " %-19s %14s %14s %14s\n", name, SHOWN(w->system, MASS, low), SHOWN(w->system, MASS, central),
            SHOWN(w->system, MASS, high));
}

static void uncertainty(const writing *w)
{
    const boil_correction *p = w->p;
    const boil_correct_amounts *a = &p->amounts_low, *b = &p->amounts, *c = &p->amounts_high;
    if (!(p->asked.uncertain_K > 0))
        return;
    fputc('\n', w->to);
    report_verdict(w->to, "By the reading's uncertainty, without what boils off meanwhile (below 0: to boil off)");
    fprintf(w->to, " %-19s %14s %14s %14s\n", "if it boils at",
            SHOWN(w->system, TEMPERATURE, p->asked.reads_K - p->asked.uncertain_K),
            SHOWN(w->system, TEMPERATURE, p->asked.reads_K),
            SHOWN(w->system, TEMPERATURE, p->asked.reads_K + p->asked.uncertain_K));
    range_line(w, "water", a->water_kg, b->water_kg, c->water_kg);
    range_line(w, "dry salts", a->salts_kg, b->salts_kg, c->salts_kg);
    range_line(w, "liquid", a->liquid_kg, b->liquid_kg, c->liquid_kg);
    report_paragraph(w->to, "Put in the least of these, let it mix, read again, then the rest.");
}

static void after(const writing *w)
{
    const boil_correction *p = w->p;
    fputs("\nAfterwards\n", w->to);
    listing_line(w->to, "boils at", DIM_TEMPERATURE, p->end_K, "");
    listing_line(w->to, "strength", DIM_CONCENTRATION, p->end_strength_kg_m3, "salts per volume of hot bath");
    listing_line(w->to, "boiled off", DIM_MASS, p->boiled_off_kg, "meanwhile: counted in");
    listing_line(w->to, "level", DIM_LENGTH, p->end_still_m, "still");
    listing_line(w->to, "", DIM_LENGTH, p->end_boiling_m, "boiling, upper estimate");
    listing_line(w->to, "", DIM_LENGTH, p->end_loaded_m, "highest as the next load goes in, at the gravest");
    if (p->bail_to_wanted_m3 > 0)
        listing_line(w->to, "too full by salts", DIM_VOLUME, p->bail_to_wanted_m3,
                     "to bail out in all, when cold, for the level wanted");
    listing_line(w->to, "next load", DIM_MASS, p->asked.next_load.mass_kg + p->asked.next_load.basket_kg, "the heaviest");
    listing_line(w->to, "least freeboard", DIM_LENGTH, p->freeboard_min_m, "until then, at the gravest");
}

/* A bath that only simmers is read too low, and what is then put in makes it far too strong; one that does not boil under a crust,
   water or a still surface may be far hotter than its boil, and what goes in then erupts. */
static void doubt(const writing *w)
{
    const boil_limits *l = &w->scenario->plant.limits;
    double reads_K = w->p->asked.reads_K;
    if (reads_K < l->boiling_point_low_K)
        report_paragraph(
            w->to,
            "WARNING: %s is below the band, which begins at %s. Was it read at a full boil? A quiet bath is cooler, "
            "not weaker: if it did not boil all over, add nothing, let it boil, and read again.",
            SHOWN(w->system, TEMPERATURE, reads_K), SHOWN(w->system, TEMPERATURE, l->boiling_point_low_K));
    if (reads_K > l->boiling_point_high_K)
        report_paragraph(
            w->to,
            "WARNING: %s is above the band, which ends at %s. Was it read at a full boil, away from heater and floor? "
            "What is quiet there is overheated, and whatever goes in sets it off: if it did not boil all over, heat off, "
            "put nothing in, keep away, and let it cool.",
            SHOWN(w->system, TEMPERATURE, reads_K), SHOWN(w->system, TEMPERATURE, l->boiling_point_high_K));
}

void correct_report(const void *answer, const output *o, FILE *to)
{
    const correct_answer *a = answer;
    writing w = {&a->plan, a->scenario, o->system, to};
    boil_initial_charge as = a->scenario->plant.charge;
    as.basis = BOIL_INITIAL_BY_BOILING_POINT;
    doubt(&w);
    verdict(&w);
    lowered(&w);
    report_title(to, a->scenario->title);
    bath(&w);
    steps(&w);
    uncertainty(&w);
    after(&w);
    fputc('\n', to);
    report_uncertainty(&as, o->system, to);
    report_paragraph(to, "Automatic water is shut meanwhile, and nothing is worked; the heat stays as it is, the mixer %s.",
                     a->scenario->plant.fittings.mixer_on ? "on" : "off");
    if (a->plan.liquid.mass_kg > 0)
        report_paragraph(to, "The liquid goes in at %s: it must not have crystallised.",
                         SHOWN(o->system, TEMPERATURE, a->plan.asked.liquid_K));
    report_caution(to);
}
