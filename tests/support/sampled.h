/* support/sampled.h -- how many of the states a test walks through are tried under the sanitizers: they look for what no figure
   shows, and need each path a few times; the plain build tries every state. */
#ifndef SUPPORT_SAMPLED_H
#define SUPPORT_SAMPLED_H

#if defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SUPPORT_SANITIZED 1
#endif
#endif
#if defined(__SANITIZE_ADDRESS__)
#define SUPPORT_SANITIZED 1
#endif

static inline int sampled(int all, int sanitized)
{
#ifdef SUPPORT_SANITIZED
    (void)all;
    return sanitized;
#else
    (void)sanitized;
    return all;
#endif
}

#endif
