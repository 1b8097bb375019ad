/* support/json.h -- whether a text is one value of JSON and nothing else [RFC 8259, sections 2 to 7]. */
#ifndef SUPPORT_JSON_H
#define SUPPORT_JSON_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

/* Each of these is behind what it names, or NULL where that does not stand there. */
static inline const char *json_blank(const char *at)
{
    return at + strspn(at, " \t\r\n");
}

static inline const char *json_string(const char *at)
{
    if (*at++ != '"')
        return NULL;
    for (; *at != '"'; at++) {
        if ((unsigned char)*at < 0x20)
            return NULL;
        if (*at != '\\')
            continue;
        at++;
        if (*at == 'u' && strspn(at + 1, "0123456789abcdefABCDEF") >= 4)
            at += 4;
        else if (*at == '\0' || strchr("\"\\/bfnrt", *at) == NULL)
            return NULL;
    }
    return at + 1;
}

static inline const char *json_digits(const char *at)
{
    size_t n = strspn(at, "0123456789");
    return n > 0 ? at + n : NULL;
}

static inline const char *json_number_at(const char *at)
{
    at += *at == '-';
    bool leads = *at == '0';
    const char *behind = json_digits(at);
    if (behind == NULL || (leads && behind > at + 1))
        return NULL;
    if (*behind == '.' && (behind = json_digits(behind + 1)) == NULL)
        return NULL;
    if (*behind != 'e' && *behind != 'E')
        return behind;
    behind++;
    return json_digits(behind + (*behind == '+' || *behind == '-'));
}

static inline const char *json_word(const char *at)
{
    static const char *const words[] = {"true", "false", "null"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (strncmp(at, words[i], strlen(words[i])) == 0)
            return at + strlen(words[i]);
    return NULL;
}

static inline const char *json_value(const char *at);

/* What stands between brackets or braces: values, or members, a comma between two and none else. */
static inline const char *json_many(const char *at, char closing)
{
    at = json_blank(at + 1);
    if (*at == closing)
        return at + 1;
    for (;; at++) {
        if (closing == '}') {
            at = json_string(json_blank(at));
            if (at == NULL || *(at = json_blank(at)) != ':')
                return NULL;
            at++;
        }
        at = json_value(at);
        if (at == NULL || (*at != ',' && *at != closing))
            return NULL;
        if (*at == closing)
            return at + 1;
    }
}

/* With the blanks around it. */
static inline const char *json_value(const char *at)
{
    at = json_blank(at);
    const char *behind = *at == '{'                ? json_many(at, '}')
                         : *at == '['              ? json_many(at, ']')
                         : *at == '"'              ? json_string(at)
                         : strchr("tfn", *at) != 0 ? json_word(at)
                                                   : json_number_at(at);
    return behind != NULL ? json_blank(behind) : NULL;
}

static inline bool is_json(const char *text)
{
    const char *end = json_value(text);
    return end != NULL && *end == '\0';
}

#endif
