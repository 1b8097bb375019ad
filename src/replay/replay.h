/* replay/replay.h -- a scenario as carried out, made ready to be shown again in time: few moments with straight lines between them,
   the band of the other runs of its set, where to slow down, and a sentence an event. SI; times from the start. */
#ifndef REPLAY_REPLAY_H
#define REPLAY_REPLAY_H

#include "base/format.h"
#include "base/text.h"
#include "describe/carried_out.h"
#include "replay/thin.h"

/* What floats nothing leaves as it is: a freeboard that no tank has. */
#define REPLAY_NOTHING_M 9.99

/* The least water that is shown and told as floating: it shows in the gravest run of a small tank. 0.05 gal, judgement. The page's
   script has it again (data.js). */
#define REPLAY_AFLOAT_KG 0.19

/* Of all runs of the set but the mild ones, each laid abreast of the likely one (replay/abreast.h): what is highest may lie anywhere
   between the rows around. */
typedef struct {
    double time_s, low_m, high_m;
    double left_m; /* least freeboard that what floats would leave if it let go now; REPLAY_NOTHING_M: nothing floats */
} replay_band;

/* Where a replay slows down: the level rises by over BOIL_FAST_LEVEL of the depth a second, or crosses the rim, or a fifth of a
   kilogram of floating water goes in a second; two seconds before and after. */
typedef struct {
    double from_s, to_s;
    double speed; /* seconds of the bath a second, for twelve seconds in all; REPLAY_SLOWEST to REPLAY_QUICKEST */
} replay_span;

#define REPLAY_SLOWEST 0.2
#define REPLAY_QUICKEST 5.0

/* The highest level so far, as it rose. */
typedef struct {
    double time_s, likely_m, possible_m;
} replay_tide;

typedef struct {
    double time_s;
    bool grave;   /* over the rim, or it would be */
    size_t order; /* in which they were told: of one moment the first comes first */
    TEXT_OF(300) text;
} replay_event;

typedef struct {
    const carried_out *of;
    unit_system system;
    double slack; /* bounds of what is left out times this */
    boil_row *rows;
    size_t rows_count;
    replay_band *band;
    size_t band_count;
    replay_span *spans;
    size_t spans_count;
    replay_tide *tide;
    size_t tide_count;
    replay_event *events;
    size_t events_count, events_capacity;
    double calm_kg_s; /* steam as usual: as the boil is steady; 0: it never boiled for a minute, and nothing is usual */
    double law_m;     /* level where a void of a half ends what the law of swell knows; NaN: it stays below */
} replay;

/* Options by which a scenario must be carried out to be replayed: rows a second apart, closer where the level moves fast, of every
   run of the set. */
boil_run_options replay_options(const boil_schedule *s);

/* False when memory is refused, which base/memory.h keeps in mind. To be freed either way. */
bool replay_of(const carried_out *o, unit_system s, double slack, replay *out);
void replay_free(replay *r);

/* A moment as it is shown: straight between rows. */
boil_row replay_at(const replay *r, double time_s);
replay_band replay_band_at(const replay *r, double time_s);

/* In one sentence: "quiet, 0.7 degF below boiling; 8.5 in to the rim; 4.70 lb of water float". */
typedef TEXT_OF(300) replay_words;
replay_words replay_state(const replay *r, double time_s);

/* Between the files of this folder. */
thin_table replay_rows_table(const replay *r);
thin_table replay_band_table(const replay *r);
bool replay_band_make(replay *r, const boil_history *likely);
bool replay_spans_make(replay *r, const boil_history *likely);
bool replay_tide_make(replay *r);
void replay_events_make(replay *r);

#endif
