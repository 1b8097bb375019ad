/* support/close.h -- comparing floating-point numbers in cmocka tests: prints both at full precision, and NaN fails. */
#ifndef SUPPORT_CLOSE_H
#define SUPPORT_CLOSE_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>

#define assert_close(got, want, relative, absolute) assert_close_at((got), (want), (relative), (absolute), __FILE__, __LINE__)

static inline void assert_close_at(double got, double want, double relative, double absolute, const char *file, int line)
{
    double allowed = relative * fabs(want) + absolute;
    if (fabs(got - want) <= allowed)
        return;
    print_error("%s:%d: got %.17g, want %.17g, off by %.3g, allowed %.3g\n", file, line, got, want, got - want, allowed);
    _fail(file, line);
}

#endif
