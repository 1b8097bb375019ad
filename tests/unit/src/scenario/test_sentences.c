/* What a shop says of a shift, and the lines that say it: each must read without a mistake or a remark. The sentences are common
   practice, no source.

   A line that does not read yet is marked NOT_YET. The test fails when it begins to read: whoever builds it takes the mark away. */
#include "support/close.h"
#include "support/scratch.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "scenario/scenario.h"

#define TOP "start = 6:00\nduration = 4 h\n"
#define TANK "length = 6 ft\nwidth = 2 ft\ndepth = 30 in\nlevel = 20 in\n"
#define BATH "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\n"
#define HEAT "source = gas\ninput = 330 kBtu/h\n"
#define PLATE "load 80 lb, plate 1/4 in"

/* clang-format off */
static const struct {
    int number;
    const char *says;
    const char *acts;                    /* of the schedule; NULL: none */
    const char *top, *tank, *bath, *heat; /* more of each; NULL: nothing more */
    const char *more;                    /* sections */
    size_t remarks;                      /* that are made of it */
} table[] = {
    {1, "80 lb of 1/4 plate in at five past six, out after twenty minutes", .acts = "0:05 " PLATE ", for 20 min"},
    {2, "the basket weighs 15 lb", .acts = "0:05 " PLATE ", for 20 min, basket 15 lb"},
    {3, "a load every half hour", .acts = "every 30 min from 0:05 to 3:35 " PLATE ", for 20 min"},
    {4, "a load every half hour, not in the break", .acts = "every 30 min from 0:05 to 3:35 except 2:00 to 2:15  " PLATE ", for 20 min", .remarks = 1},
    {4, "the same, the break having a name", .acts = "every 30 min from 0:05 to 3:35 except breaks  " PLATE ", for 20 min",
     .more = "[breaks]\n2:00 to 2:15  coffee\n", .remarks = 1},
    {5, "written by the wall clock", .acts = "6:05  " PLATE ", for 20 min", .top = "times = by the clock\n"},
    {6, "two racks side by side", .acts = "0:05  " PLATE ", position 1\n0:05  " PLATE ", position 2", .tank = "positions = 2\n"},
    {7, "rack 3 in, rack 3 out when told", .acts = "0:05 " PLATE ", as rack 3\n0:30 lift rack 3"},
    {8, "everything out", .acts = "0:05 " PLATE "\n0:30 lift"},
    {9, "small screws, a basket packed six inches deep", .acts = "0:05 load 60 lb, bar 1/4 in, packed 6 in, for 20 min"},
    {10, "mixed basket: plate and pins", .acts = "0:05 load 40 lb, plate 1/4 in, for 20 min\n0:05 load 20 lb, bar 1/2 in, for 20 min"},
    {11, "parts come warm from a hot rinse", .acts = "0:05 " PLATE ", at 160 degF, for 20 min"},
    {12, "parts come wet from the cold rinse", .acts = "0:05 " PLATE ", at 60 degF, rinse 100 mL/m2, for 20 min"},
    {13, "120 caps, each with a thimbleful of water in it",
     .acts = "0:05 load 80 lb, plate 1/8 in, 120 pieces, pockets 15 mL each, for 20 min"},
    {14, "tubes, open both ends", .acts = "0:05 load 50 lb, tube 1 in wall 2 mm, for 20 min"},
    {15, "cast iron parts", .acts = "0:05 load 50 lb iron, plate 1 in, for 30 min"},
    {16, "twenty minutes at the boil, not twenty minutes in the tank", .acts = "0:05 " PLATE ", for 20 min at the boil"},
    {17, "lower it slowly, half a minute", .acts = "0:05 " PLATE ", lowered over 30 s, for 20 min"},
    {18, "nine and a half gallons over a quarter of an hour", .acts = "0:10 water 9.5 gal over 15 min"},
    {19, "hose at half a gallon a minute for ten gallons", .acts = "0:10 water 10 gal at 0.5 gal/min"},
    {20, "water until the mark", .acts = "0:10 water at 0.5 gal/min until the mark, at most 15 gal", .tank = "mark = 21 in\n"},
    {21, "water until it boils at 285 again",
     .acts = "0:10 water at 0.5 gal/min until boiling point 285 degF, at most 15 gal"},
    {22, "water only while it boils", .acts = "0:10 water 9.5 gal over 15 min, while boiling"},
    {23, "when the boil is back, give it two gallons", .acts = "0:10 when boiling  water 2 gal over 4 min"},
    {24, "five minutes after the boil is back", .acts = "0:05 " PLATE ", for 20 min\n5 min after the boil is back  water 2 gal over 4 min"},
    {25, "a bucket of water every quarter hour", .acts = "every 15 min from 0:10  water 1 bucket over 5 min",
     .more = "[measures]\nbucket = 5 gal\n"},
    {26, "water from the boiler", .acts = "0:10 water 5 gal over 10 min, at 180 degF"},
    {27, "the float valve, set at 285", .more = "[water control]\nset point = 285 degF\nrate = 35 gal/h\n"},
    {28, "the valve shuts when the boil stops",
     .more = "[water control]\nset point = 285 degF\nrate = 35 gal/h\nonly while boiling = yes\n"},
    {29, "somebody hoses the tank down for a minute", .acts = "1:00 water 5 gal over 1 min, at 50 degF"},
    {30, "two bags of salt, one after the other", .acts = "1:00  salts 2 bags, one every 15 min over 10 min",
     .more = "[measures]\nbag = 50 lb\n"},
    {31, "fifty pounds of salt sifted in over twenty minutes", .acts = "1:00 salts 50 lb over 20 min"},
    {32, "a bag of plain caustic", .acts = "1:00 salts 50 lb over 20 min, blend 100 % NaOH"},
    {33, "five gallons of ready-mixed", .acts = "1:00 liquid 5 gal over 5 min"},
    {34, "ready-mixed of 6 lb a gallon", .acts = "1:00 liquid 5 gal over 5 min, strength 6 lb/gal"},
    {35, "bail out five gallons", .acts = "1:00  bail 5 gal over 5 min"},
    {36, "drain it down to the mark", .acts = "1:00  drain to the mark, at 5 gal/min", .tank = "mark = 19 in\n"},
    {37, "put back what was bailed", .acts = "1:00  bail 5 gal over 5 min, as drum 1\n2:00  return drum 1 over 10 min"},
    {38, "skim the surface", .acts = "1:00  bail 1 gal over 2 min, from the surface"},
    {39, "low fire while nothing is in", .acts = "1:00 heat 40 %"},
    {40, "full fire", .acts = "1:00 heat on"},
    {41, "burner off at the end of the shift", .acts = "3:30 heat off"},
    {42, "thermostat at 285", .heat = "control = thermostat\nset point = 285 degF\ndifferential = 4 degF\n"},
    {43, "modulating burner, four to one", .heat = "control = modulating\nset point = 290 degF\nturndown = 4 to 1\n"},
    {44, "set back to 250 overnight", .acts = "3:30  heat thermostat 250 degF"},
    {45, "light the burner at five, boil at six", .acts = "0:00 heat on", .bath = "temperature = 75 degF\n"},
    {46, "start cold on Monday", .bath = "temperature = 60 degF\n"},
    {47, "lid on for the night", .acts = "3:50 lid on"},
    {48, "take the lid off", .acts = "0:10 lid off", .more = "[fittings]\nlid = on\n"},
    {49, "mixer on while the salt goes in", .acts = "1:00 mixer on\n1:00 salts 50 lb over 20 min\n1:30 mixer off"},
    {50, "stir it with the paddle for two minutes", .acts = "1:00  stir for 2 min"},
    {51, "exhaust fan off at night", .acts = "3:50 exhaust off"},
    {52, "the gas pressure drops by a fifth at eight", .acts = "2:00 heat 80 %"},
    {53, "gas costs 1.20 a therm, salt 1.90 a pound", .more = "[prices]\ngas = 1.20 per therm\nsalts = 1.90 per lb\n"},
    {54, "what does a shift cost",
     .more = "[prices]\ngas = 1.20 per therm\nwater = 6 per 1000 gal\nlabour = 40 per h\ncurrency = USD\n"},
    {55, "propane burner, 3.6 gallons an hour", .heat = "PROPANE"},
    {56, "steam coil at 100 psi", .heat = "STEAM"},
    {57, "we hold 280 to 295", .more = "[limits]\nboiling point = 280 degF to 295 degF\n"},
    {58, "the boil must be back in two minutes", .more = "[limits]\nrecovery = 2 min\n"},
    {59, "keep eight inches clear", .more = "[limits]\nfreeboard = 8 in\n"},
    {60, "night shift over midnight", .top = "NIGHT"},
    {61, "saturday off, monday start", .top = "WEEKEND"},
};
/* clang-format on */

#define ROWS (sizeof table / sizeof table[0])

static const char *or_nothing(const char *text)
{
    return text != NULL ? text : "";
}

/* Four rows have another start, or another heat, rather than more of it. */
static void write_top(FILE *f, const char *top)
{
    if (top != NULL && strcmp(top, "NIGHT") == 0)
        fputs("start = 22:00\nduration = 8 h\n", f);
    else if (top != NULL && strcmp(top, "WEEKEND") == 0)
        fputs("start = 6:00\nduration = 68 h\n", f);
    else
        fprintf(f, TOP "%s", or_nothing(top));
}

static void write_heat(FILE *f, const char *heat)
{
    if (heat != NULL && strcmp(heat, "STEAM") == 0)
        fputs("[heat]\nsource = steam\nsteam pressure = 100 psig\ncoil area = 40 ft2\n", f);
    else if (heat != NULL && strcmp(heat, "PROPANE") == 0)
        fputs("[heat]\nsource = gas\nfuel = propane\ninput = 3.6 gal/h\n", f);
    else
        fprintf(f, "[heat]\n" HEAT "%s", or_nothing(heat));
}

static void write_row(size_t i)
{
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    write_top(f, table[i].top);
    fprintf(f, "[tank]\n" TANK "%s", or_nothing(table[i].tank));
    fputs("[bath]\n", f);
    fputs(BATH, f);
    fputs(or_nothing(table[i].bath), f);
    write_heat(f, table[i].heat);
    fputs(or_nothing(table[i].more), f);
    if (table[i].acts != NULL)
        fprintf(f, "[schedule]\n%s\n", table[i].acts);
    assert_int_equal(fclose(f), 0);
}

static void every_sentence_reads(void **state)
{
    (void)state;
    int last = 0;
    for (size_t i = 0; i < ROWS; i++) {
        scenario s;
        messages m;
        messages_init(&m);
        write_row(i);
        if (scenario_read(scratch_path, &s, &m) != BOIL_OK || m.count != table[i].remarks)
            fail_msg("%d, '%s': %s", table[i].number, table[i].says, m.count > 0 ? m.list[0].text : "not read");
        assert_true(table[i].number == last || table[i].number == last + 1);
        last = table[i].number;
        scenario_free(&s);
        messages_free(&m);
    }
    assert_int_equal(last, 61);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_sentence_reads),
    };
    return cmocka_run_group_tests_name("sentences", tests, scratch_begin, scratch_end);
}
