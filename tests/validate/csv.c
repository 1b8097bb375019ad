/* validate/csv.c -- the same rows to reckon with. */
#include "validate/validate.h"

static void put_field(FILE *to, const char *text)
{
    fputs(",\"", to);
    for (const char *c = text; *c; c++) {
        if (*c == '"')
            fputc('"', to);
        fputc(*c, to);
    }
    fputc('"', to);
}

void validate_csv(const validate_answer *answer, FILE *to)
{
    fputs("id,table,group,what,unit,status,printed,ours_low,ours_high,kind,band,deviation,deviation_over_band,verdict,reason,"
          "source\n",
          to);
    for (size_t i = 0; i < answer->count; i++) {
        const validate_row *r = &answer->rows[i];
        fputs(r->id, to);
        put_field(to, r->table);
        put_field(to, r->group);
        put_field(to, r->what);
        put_field(to, r->unit);
        fprintf(to, ",%c,%.10g,%.10g,%.10g,%s,%g,%.6g,%.6g,%s", r->status, r->value, r->ours.low, r->ours.high, r->kind,
                r->band, r->deviation, r->distance,
                !validate_compared(r) ? "not compared"
                : validate_inside(r)  ? "inside"
                                      : "outside");
        put_field(to, r->reason);
        put_field(to, r->source);
        fputc('\n', to);
    }
}
