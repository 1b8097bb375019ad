/* sheet_json.c -- the designer's sheet for other programs, in SI. */
#include "commands/size/sheet.h"
#include "describe/report.h"

static const char *const kinds[] = {[SHEET_VALUE] = "value",
                                    [SHEET_MISSING] = "none",
                                    [SHEET_REMARK] = "remark",
                                    [SHEET_WARNING] = "warning",
                                    [SHEET_NOTICE] = "notice"};

static const char *const origins[] = {[SHEET_RUN] = "run",
                                      [SHEET_TABLE] = "table",
                                      [SHEET_UNREAD] = "table not read",
                                      [SHEET_FORMULA] = "formula",
                                      [SHEET_REMEMBERED] = "formula not read",
                                      [SHEET_PRACTICE] = "practice",
                                      [SHEET_YOURS] = "yours"};

static const char *const si[SHEET_UNITS] = {
    [SHEET_HEAT] = "W",          [SHEET_FLUX] = "W/m2",    [SHEET_TEMPERATURE] = "K", [SHEET_DIFFERENCE] = "K",
    [SHEET_LENGTH] = "m",        [SHEET_SHORT] = "m",      [SHEET_AREA] = "m2",       [SHEET_VOLUME] = "m3",
    [SHEET_MASS] = "kg",         [SHEET_AIR] = "m3/s",     [SHEET_GAS] = "m3/s",      [SHEET_SPEED] = "m/s",
    [SHEET_DRAUGHT_LOSS] = "Pa", [SHEET_TRICKLE] = "m3/s", [SHEET_FLOW] = "m3/s",     [SHEET_STEAM] = "kg/s",
    [SHEET_HOUR] = "s",          [SHEET_ENERGY] = "J",     [SHEET_YEAR] = "J",        [SHEET_LINE_LOAD] = "N/m",
    [SHEET_INERTIA] = "m4",      [SHEET_STRESS] = "Pa",    [SHEET_GAUGE] = "Pa",      [SHEET_RATIO] = "1",
    [SHEET_NUMBER] = "1",        [SHEET_COUNT] = "1",      [SHEET_SHARE] = "1"};

/* clang-format off */
WRITES(scenario_path, sheet, text, r->facts.scenario->path)
WRITES(name, sheet_row, text, r->name[0] == ' ' ? r->name + 1 : r->name[0] != '\0' ? r->name : NULL)
WRITES(words, sheet_row, text, r->words[0] != '\0' ? r->words : NULL)

#define RECORD sheet_row
static const field row[] = {
    WORD("kind", kind, kinds, "of row: a value, one that there is none of, or words"), TEXT("group", group, "what it belongs to"),
    GIVEN(FIELD_TEXT, "name", NULL, name, "of the values; null: words only"),
    NUMBERS("values", values, count, "in the SI unit of the row"), WORD("unit", unit, si, "of the values; 1: a ratio, a count or money"),
    WORD("from", from, origins, "where it comes from"), BOOL("assumed", assumed, "rests on a default or on judgement"),
    BOOL("doubted", doubted, "a warning stands on it"),
    GIVEN(FIELD_TEXT, "words", NULL, words, "what is to be given, a remark or a warning; null: none"), FIELDS_END};
#undef RECORD

#define RECORD sheet
const field sheet_fields[] = {
    VERSION_FIELD, GIVEN(FIELD_TEXT, "scenario", NULL, scenario_path, "the file, as it was named"),
    ARRAY("rows", rows, rows_count, row, "of the sheet, in its order; none when no heat has the boil back in time"), FIELDS_END};
#undef RECORD

/* clang-format on */
