/* validate/summary.c -- a line a group: how many rows, how many outside, and how far off they are, over the band. */
#include "validate/validate.h"

static int by_size(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* How far each compared row of the group is off, over its band; ascending. The caller frees it. */
static double *distances_of(const validate_answer *answer, const char *group, size_t *count)
{
    double *distances = malloc((answer->count + 1) * sizeof *distances);
    assert_non_null(distances);
    *count = 0;
    for (size_t i = 0; i < answer->count; i++)
        if (validate_compared(&answer->rows[i]) && strcmp(answer->rows[i].group, group) == 0)
            distances[(*count)++] = fabs(answer->rows[i].distance);
    qsort(distances, *count, sizeof *distances, by_size);
    return distances;
}

void validate_summary(const validate_answer *answer, FILE *to)
{
    fprintf(to, "\n%-20s %6s %8s %24s\n", "group", "values", "outside", "off over band, median");
    for (size_t i = 0; validate_group(i) != NULL; i++) {
        size_t count, inside = 0;
        double *distances = distances_of(answer, validate_group(i), &count);
        while (inside < count && distances[inside] <= 1)
            inside++;
        if (count > 0)
            fprintf(to, "%-20s %6zu %8zu %24.2f\n", validate_group(i), count, count - inside, distances[count / 2]);
        free(distances);
    }
}
