/* The unit table against definitions and printed tables, and against itself. */
#include "base/units.h"
#include "support/close.h"
#include "support/published.h"

/* How a row of the published table is asked of ours; `to` NULL: SI. */
static const struct {
    const char *id;
    unit_dimension dimension;
    double value;
    const char *from, *to;
} rows[] = {
    {"U001", DIM_LENGTH, 1, "in", "m"},
    {"U002", DIM_LENGTH, 1, "ft", "m"},
    {"U003", DIM_AREA, 1, "ft2", "m2"},
    {"U004", DIM_VOLUME, 1, "ft3", "m3"},
    {"U005", DIM_VOLUME, 1, "gal", "m3"},
    {"U006", DIM_VOLUME, 1, "gal", "L"},
    {"U007", DIM_MASS, 1, "lb", "kg"},
    {"U008", DIM_MASS, 1, "oz", "kg"},
    {"U009", DIM_POWER, 3600, "Btu/h", "W"},
    {"U013", DIM_PRESSURE, 1, "psia", "Pa"},
    {"U014", DIM_PRESSURE, 1, "atm", "Pa"},
    {"U024", DIM_TEMPERATURE, 32, "degF", "degC"},
    {"U025", DIM_TEMPERATURE, 212, "degF", "degC"},
    {"U026", DIM_TEMPERATURE, 285, "degF", "degC"},
    {"U027", DIM_TEMPERATURE, 290, "degF", "degC"},
    {"U028", DIM_TEMPERATURE, 68, "degF", "degC"},
    {"U029", DIM_TEMPERATURE, -40, "degF", "degC"},
    {"U030", DIM_DIFFERENCE, 1, "degF", "K"},
    {"U031", DIM_CONCENTRATION, 1, "lb/gal", "kg/m3"},
    {"U033", DIM_VOLUME_FLOW, 1, "gal/min", NULL},
    {"U036", DIM_SPEED, 1, "ft/min", "m/s"},
    {"U036a", DIM_SPEED, 1, "ft/s", "m/s"},
    {"U036b", DIM_SPEED, 1, "mph", "m/s"},
    {"U037", DIM_POWER, 1, "Btu/h", "W"},
    {"U039", DIM_COEFFICIENT, 1, "Btu/hft2F", "W/m2K"},
    {"U046", DIM_VOLUME_PER_AREA, 1, "gal/1000ft2", NULL},
    {"U049", DIM_PRESSURE, 1, "inHg", "Pa"},
    {"U062", DIM_PRESSURE, 1, "psia", "kPa"},
    {"U063", DIM_VOLUME, 1, "gal", "L"},
    {"U064", DIM_POWER, 3600, "Btu/h", "W"},
    {"U067", DIM_POWER, 1, "kW", "Btu/h"},
    {"U069", DIM_VOLUME, 1, "ft3", "gal"},
    {"U071", DIM_PRESSURE, 1, "atm", "inHg"},
};

#define ROWS (sizeof rows / sizeof rows[0])

/* Half a unit of the last printed digit. */
static double half_last_digit(const char *printed)
{
    const char *power = strpbrk(printed, "eE"), *point = strchr(printed, '.');
    const char *end = power != NULL ? power : printed + strlen(printed);
    double exponent = power != NULL ? strtod(power + 1, NULL) : 0;
    double decimals = point != NULL ? (double)(end - point - 1) : 0;
    return 0.5 * pow(10, exponent - decimals);
}

static double ask(size_t i)
{
    double si = unit_to_si(rows[i].dimension, rows[i].from, rows[i].value);
    return rows[i].to != NULL ? unit_from_si(rows[i].dimension, rows[i].to, si) : si;
}

/* A definition holds to rounding (1e-13; temperatures pass through kelvin: 1e-12 K of 500), a printed value to its last
   digit. */
static void check_row(published *t, size_t i, double *worst)
{
    const char *printed = published_text(t, "value");
    double want = published_number(t, "value"), got = ask(i);
    bool exact = strcmp(published_text(t, "stated_or_judged_uncertainty"), "exact by definition") == 0;
    bool offset = rows[i].dimension == DIM_TEMPERATURE;
    double allowed = exact ? 1e-13 * fabs(want) : offset && strchr(printed, '.') == NULL ? 1e-12 : half_last_digit(printed);
    assert_close(got, want, 0, allowed * (1 + 1e-6));
    if (want != 0)
        *worst = fmax(*worst, fabs(got / want - 1));
}

static void factors_are_the_published_ones(void **state)
{
    (void)state;
    published *t = published_open("tests/published/units.csv");
    double worst = 0;
    size_t found = 0;
    while (published_next(t))
        for (size_t i = 0; i < ROWS; i++)
            if (strcmp(published_text(t, "id"), rows[i].id) == 0) {
                check_row(t, i, &worst);
                found++;
            }
    published_close(t);
    assert_int_equal(found, ROWS);
    print_message("units.csv: %zu rows, largest relative deviation %.1e (printed digits)\n", found, worst);
}

/* Row U015 gives the torr, 101325/760 Pa. Our mmHg is the conventional one at 0 degC, 133.322387415 Pa, so that 25.4 of
   them are our inHg; they differ by 1.4e-7 by definition (NIST SP 811, appendix B lists both). */
static void millimetre_of_mercury_is_not_the_torr(void **state)
{
    (void)state;
    published *t = published_open("tests/published/units.csv");
    while (published_next(t))
        if (strcmp(published_text(t, "id"), "U015") == 0) {
            double ratio = unit_to_si(DIM_PRESSURE, "mmHg", 1) / published_number(t, "value");
            assert_close(ratio - 1, 1.424e-7, 0.01, 0);
        }
    published_close(t);
    assert_close(unit_to_si(DIM_PRESSURE, "mmHg", 25.4), unit_to_si(DIM_PRESSURE, "inHg", 1), 1e-15, 0);
}

/* Each unit by what it is defined as: inch 25.4 mm, pound 0.45359237 kg, US gallon 231 cubic inches, British thermal unit (IT)
   1055.05585262 J, standard gravity 9.80665 m/s2, mercury at 0 degC 13595.1 kg/m3 [NIST SP 811 (2008), appendix B, from memory]. None of
   the table is left out. */
static const struct {
    unit_dimension dimension;
    const char *spelling;
    double si;
} defined[] = {
    {DIM_LENGTH, "m", 1},
    {DIM_LENGTH, "cm", 0.01},
    {DIM_LENGTH, "mm", 0.001},
    {DIM_LENGTH, "in", 0.0254},
    {DIM_LENGTH, "ft", 0.3048},
    {DIM_AREA, "m2", 1},
    {DIM_AREA, "ft2", 0.09290304},
    {DIM_AREA, "in2", 6.4516e-4},
    {DIM_VOLUME, "L", 1e-3},
    {DIM_VOLUME, "mL", 1e-6},
    {DIM_VOLUME, "m3", 1},
    {DIM_VOLUME, "gal", 3.785411784e-3},
    {DIM_VOLUME, "qt", 9.46352946e-4},
    {DIM_VOLUME, "pt", 4.73176473e-4},
    {DIM_VOLUME, "UKgal", 4.54609e-3},
    {DIM_VOLUME, "ft3", 0.028316846592},
    {DIM_MASS, "kg", 1},
    {DIM_MASS, "g", 1e-3},
    {DIM_MASS, "t", 1000},
    {DIM_MASS, "lb", 0.45359237},
    {DIM_MASS, "oz", 0.028349523125},
    {DIM_TIME, "s", 1},
    {DIM_TIME, "min", 60},
    {DIM_TIME, "h", 3600},
    {DIM_TEMPERATURE, "degC", 274.15},
    {DIM_TEMPERATURE, "degF", 460.67 / 1.8},
    {DIM_TEMPERATURE, "K", 1},
    {DIM_DIFFERENCE, "K", 1},
    {DIM_DIFFERENCE, "degC", 1},
    {DIM_DIFFERENCE, "degF", 1 / 1.8},
    {DIM_GAUGE_PRESSURE, "psig", 0.45359237 * 9.80665 / 6.4516e-4},
    {DIM_GAUGE_PRESSURE, "barg", 1e5},
    {DIM_PRESSURE, "Pa", 1},
    {DIM_PRESSURE, "kPa", 1000},
    {DIM_PRESSURE, "bar", 1e5},
    {DIM_PRESSURE, "mbar", 100},
    {DIM_PRESSURE, "hPa", 100},
    {DIM_PRESSURE, "psia", 0.45359237 * 9.80665 / 6.4516e-4},
    {DIM_PRESSURE, "inHg", 13595.1 * 9.80665 * 0.0254},
    {DIM_PRESSURE, "mmHg", 13595.1 * 9.80665 * 0.001},
    {DIM_PRESSURE, "atm", 101325},
    {DIM_POWER, "W", 1},
    {DIM_POWER, "kW", 1000},
    {DIM_POWER, "Btu/h", 1055.05585262 / 3600},
    {DIM_POWER, "kBtu/h", 1055.05585262 / 3.6},
    {DIM_POWER, "MMBtu/h", 1055.05585262 / 3.6e-3},
    {DIM_ENERGY, "J", 1},
    {DIM_ENERGY, "MJ", 1e6},
    {DIM_ENERGY, "kWh", 3.6e6},
    {DIM_ENERGY, "kBtu", 1055055.85262},
    {DIM_ENERGY, "MMBtu", 1055055852.62},
    {DIM_ENERGY, "therm", 105505585.262},
    {DIM_CONCENTRATION, "g/L", 1},
    {DIM_CONCENTRATION, "kg/m3", 1},
    {DIM_CONCENTRATION, "lb/gal", 0.45359237 / 3.785411784e-3},
    {DIM_CONCENTRATION, "oz/gal", 0.028349523125 / 3.785411784e-3},
    {DIM_VOLUME_FLOW, "L/min", 1e-3 / 60},
    {DIM_VOLUME_FLOW, "mL/min", 1e-6 / 60},
    {DIM_VOLUME_FLOW, "L/h", 1e-3 / 3600},
    {DIM_VOLUME_FLOW, "gal/h", 3.785411784e-3 / 3600},
    {DIM_VOLUME_FLOW, "gal/min", 3.785411784e-3 / 60},
    {DIM_MASS_FLOW, "kg/h", 1. / 3600},
    {DIM_MASS_FLOW, "kg/min", 1. / 60},
    {DIM_MASS_FLOW, "lb/h", 0.45359237 / 3600},
    {DIM_COEFFICIENT, "W/m2K", 1},
    {DIM_COEFFICIENT, "Btu/hft2F", 1055.05585262 / 3600 / 0.09290304 * 1.8},
    {DIM_VOLUME_PER_AREA, "mL/m2", 1e-6},
    {DIM_VOLUME_PER_AREA, "gal/1000ft2", 3.785411784e-3 / 92.90304},
    {DIM_SPEED, "m/s", 1},
    {DIM_SPEED, "ft/min", 0.00508},
    {DIM_SPEED, "ft/s", 0.3048},
    {DIM_SPEED, "mph", 0.44704},
    {DIM_FLUX, "W/m2", 1},
    {DIM_FLUX, "kW/m2", 1000},
    {DIM_FLUX, "W/cm2", 1e4},
    {DIM_FLUX, "W/in2", 1 / 6.4516e-4},
    {DIM_FLUX, "kBtu/hft2", 1055.05585262 / 3.6 / 0.09290304},
    {DIM_STRESS, "ksi", 1000 * 0.45359237 * 9.80665 / 6.4516e-4},
    {DIM_STRESS, "MPa", 1e6},
    {DIM_FRACTION, "%", 0.01},
};

static void every_unit_is_what_it_is_defined_as(void **state)
{
    (void)state;
    size_t count = 0;
    for (size_t i = 0; i < sizeof defined / sizeof defined[0]; i++)
        assert_close(unit_to_si(defined[i].dimension, defined[i].spelling, 1), defined[i].si, 1e-14, 0);
    for (unsigned d = 0; d < DIM_COUNT; d++)
        for (size_t i = 0; unit_listed((unit_dimension)d, i) != NULL; i++)
            count++;
    assert_int_equal(count, sizeof defined / sizeof defined[0]);
}

static void every_spelling_goes_there_and_back(void **state)
{
    (void)state;
    size_t spellings = 0;
    for (unsigned d = 0; d < DIM_COUNT; d++) {
        const unit *u;
        for (size_t i = 0; (u = unit_listed((unit_dimension)d, i)) != NULL; i++)
            for (size_t k = 0; k < UNIT_SPELLINGS && u->spellings[k] != NULL; k++, spellings++) {
                double si = unit_to_si(u->dimension, u->spellings[k], 37.5);
                assert_close(si, (37.5 + u->offset) * u->factor, 0, 0);
                assert_close(unit_from_si(u->dimension, u->spellings[k], si), 37.5, 1e-14, u->offset * 1e-15);
            }
    }
    assert_true(spellings > 100);
}

static void a_difference_has_no_offset(void **state)
{
    (void)state;
    assert_close(unit_to_si(DIM_DIFFERENCE, "degF", 9), 5, 1e-15, 0);
    assert_close(unit_to_si(DIM_DIFFERENCE, "degC", 9), 9, 0, 0);
    assert_close(unit_to_si(DIM_TEMPERATURE, "degF", 9), (9 + 459.67) / 1.8, 1e-15, 0);
}

static void what_is_no_unit_is_not_a_number(void **state)
{
    (void)state;
    assert_true(isnan(unit_to_si(DIM_LENGTH, "kg", 1)));
    assert_true(isnan(unit_to_si(DIM_LENGTH, "M", 1)));
    assert_true(isnan(unit_to_si(DIM_LENGTH, "", 1)));
    assert_true(isnan(unit_to_si(DIM_LENGTH, "in ", 1)));
    assert_true(isnan(unit_from_si(DIM_PRESSURE, "psi", 1)));
    assert_true(isnan(unit_to_si(DIM_PRESSURE, "psig", 1)));
    assert_true(isnan(unit_to_si(DIM_POWER, "MBtu/h", 1)));
}

static const char *scanned(unsigned dimensions, const char *text, size_t *used)
{
    const unit *u = unit_scan(dimensions, text, strlen(text), used);
    return u != NULL ? u->spellings[0] : "none";
}

static void the_longest_spelling_wins(void **state)
{
    (void)state;
    size_t used;
    unsigned flow = UNIT_OF(DIM_VOLUME_FLOW) | UNIT_OF(DIM_MASS_FLOW), all = UNIT_OF(DIM_COUNT) - 1u;
    assert_string_equal(scanned(UNIT_OF(DIM_TIME), "min, at", &used), "min");
    assert_int_equal(used, 3);
    assert_string_equal(scanned(UNIT_OF(DIM_LENGTH), "m", &used), "m");
    assert_string_equal(scanned(UNIT_OF(DIM_LENGTH), "min", &used), "none");
    assert_string_equal(scanned(UNIT_OF(DIM_VOLUME), "gal/h", &used), "none");
    assert_string_equal(scanned(flow, "gal/h", &used), "gal/h");
    assert_string_equal(scanned(flow, "l/hr", &used), "L/h");
    assert_close(unit_to_si(DIM_VOLUME_FLOW, "L/h", 3600), 1e-3, 1e-15, 0);
    assert_string_equal(scanned(all, "lb/gal", &used), "lb/gal");
    assert_string_equal(scanned(UNIT_OF(DIM_COEFFICIENT), "Btu/(h \t ft2 F) x", &used), "Btu/hft2F");
    assert_int_equal(used, 15);
}

static void degree_sign_and_superscripts_read_as_plain_text(void **state)
{
    (void)state;
    size_t used;
    assert_string_equal(scanned(UNIT_OF(DIM_TEMPERATURE), "\u00b0F", &used), "degF");
    assert_string_equal(scanned(UNIT_OF(DIM_TEMPERATURE), "\u00b0 C", &used), "degC");
    assert_string_equal(scanned(UNIT_OF(DIM_COEFFICIENT), "W/m\u00b2K", &used), "W/m2K");
    assert_string_equal(scanned(UNIT_OF(DIM_CONCENTRATION), "kg/m\u00b3", &used), "kg/m3");
    assert_string_equal(scanned(UNIT_OF(DIM_TEMPERATURE), "\u00b0", &used), "none");
}

static void doubtful_units_are_refused_with_a_reason(void **state)
{
    (void)state;
    const char *doubtful[] = {"psi", "MBtu/h", "MBH",        "ton", "cal",     "F",     "f",
                              "c",   "degf",   "Fahrenheit", "deg", "degrees", "\u00b0"};
    size_t used;
    for (size_t i = 0; i < sizeof doubtful / sizeof doubtful[0]; i++) {
        assert_non_null(unit_refusal(doubtful[i], strlen(doubtful[i])));
        assert_null(unit_scan(UNIT_OF(DIM_COUNT) - 1u, doubtful[i], strlen(doubtful[i]), &used));
    }
    assert_null(unit_refusal("psia", 4));
    assert_string_equal(unit_refusal("\"", 1), "means inches: write in");
    assert_string_equal(unit_refusal("\u2032", 3), "means feet: write ft");
    assert_string_equal(unit_refusal("degrees", 7), "does not say whose degree: write degF or degC");
}

/* A gauge is no absolute pressure: only where a gauge is meant is its unit known, and elsewhere it is refused. */
static void a_gauge_stands_apart(void **state)
{
    (void)state;
    size_t used;
    assert_non_null(unit_refusal("psig", 4));
    assert_string_equal(scanned(UNIT_OF(DIM_PRESSURE), "psig", &used), "none");
    assert_string_equal(scanned(UNIT_OF(DIM_GAUGE_PRESSURE), "bar(g)", &used), "barg");
    assert_close(unit_to_si(DIM_GAUGE_PRESSURE, "psig", 60), unit_to_si(DIM_PRESSURE, "psia", 60), 1e-15, 0);
    assert_close(unit_to_si(DIM_ENERGY, "kWh", 1), 3.6e6, 0, 0);
    assert_close(unit_to_si(DIM_ENERGY, "kBtu", 1), 3600 * unit_to_si(DIM_POWER, "kBtu/h", 1), 1e-15, 0);
}

static void lists_are_readable(void **state)
{
    (void)state;
    char out[80];
    unit_accepted(UNIT_OF(DIM_LENGTH), out, sizeof out);
    assert_string_equal(out, "m, cm, mm, in or ft");
    unit_describe(UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS), out, sizeof out);
    assert_string_equal(out, "a volume or a mass");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(factors_are_the_published_ones),
        cmocka_unit_test(millimetre_of_mercury_is_not_the_torr),
        cmocka_unit_test(every_unit_is_what_it_is_defined_as),
        cmocka_unit_test(every_spelling_goes_there_and_back),
        cmocka_unit_test(a_difference_has_no_offset),
        cmocka_unit_test(what_is_no_unit_is_not_a_number),
        cmocka_unit_test(the_longest_spelling_wins),
        cmocka_unit_test(degree_sign_and_superscripts_read_as_plain_text),
        cmocka_unit_test(doubtful_units_are_refused_with_a_reason),
        cmocka_unit_test(a_gauge_stands_apart),
        cmocka_unit_test(lists_are_readable),
    };
    return cmocka_run_group_tests_name("units", tests, NULL, NULL);
}
