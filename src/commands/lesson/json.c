#include "commands/lesson/output.h"
#include "describe/report.h"

/* clang-format off */
#define RECORD replay_event
static const field event_fields[] = {
    SAME(time_s, "from the start"), BOOL("grave", grave, "it comes over the rim, or would"),
    CHARS("words", text.text, "what is done, or what comes of it"), FIELDS_END};
#undef RECORD

#define RECORD lesson_run
static const field run_fields[] = {
    TEXT("name", name, "A or B"), TEXT("title", title, "of the scenario; of a lesson which of its scripts"),
    LIST("events", replay.events, replay.events_count, event_fields, "in the order of time"), FIELDS_END};
#undef RECORD

#define RECORD lesson_answer
static const field answer[] = {
    VERSION_FIELD, ARRAY("runs", runs, count, run_fields, "as they are shown"), FIELDS_END};
#undef RECORD
/* clang-format on */

const document lesson_documents[] = {{"--json", "what happens, an event each", answer, false}, {0}};
