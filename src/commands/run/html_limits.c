#include "commands/run/html_sections.h"

#include "commands/run/model_limits.h"

void page_limits(html *h)
{
    html_open(h, "section", "aria-labelledby=\"limits\"");
    html_element(h, "h2", "id=\"limits\"", "What the model is, and what it is not");
    html_element(h, "p", NULL, "%s", model_limits_purpose);
    html_open(h, "ul", NULL);
    const char *limit;
    for (size_t i = 0; (limit = model_limits_listed(i)) != NULL; i++)
        html_element(h, "li", NULL, "%s", limit);
    html_close(h);
    html_close(h);
}
