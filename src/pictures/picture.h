/* pictures/picture.h -- the one way to a picture: a script of plots/ is carried out by gnuplot in a private temporary folder
   that holds its inputs.

   Nothing a person wrote can reach gnuplot as code: it is started without a shell, it is given no word of a person's on
   its command line, all names of files are ours, and texts stand in tab-separated files that scripts read as data. */
#ifndef PICTURES_PICTURE_H
#define PICTURES_PICTURE_H

#include "base/text.h"

typedef enum { PICTURE_SVG, PICTURE_PNG, PICTURE_PDF, PICTURE_TERMINAL } picture_format;

/* By the file's ending; "-" is the terminal. False when it says none of them. */
bool picture_format_of(const char *path, picture_format *format);

/* Why there is no picture: one line, no full stop. */
typedef TEXT_OF(400) picture_problem;

/* A file of that name in the script's folder, written by `write`, which is given `what`. */
typedef struct {
    const char *name; /* NULL: after the last */
    void (*write)(const void *what, FILE *to);
    const void *what;
} picture_input;

typedef struct {
    char *bytes; /* NULL: there is none */
    size_t length;
} picture_drawn;

/* A field of text as our scripts read it: an "x" so that none is empty or begins with a quote, then the text, printable,
   without blanks at its end, quotes and backslashes in octal. A script turns it back with strcol(n)[2:*]. */
void picture_text(FILE *to, const char *text);

/* Whether gnuplot is there, to be asked before long work; false, with the problem, when it is not. */
bool picture_can_be(picture_problem *problem);

/* Carries the script out. False with the problem when an input cannot be written, gnuplot is missing or fails, or what it wrote
   is not whole. The bytes are freed with picture_forget. */
bool picture_draw(const char *script, picture_format format, const picture_input inputs[], picture_drawn *drawn,
                  picture_problem *problem);
void picture_forget(picture_drawn *drawn);

/* All of it to a file, or to standard output; false, with a complaint, when not all of it could be written. */
bool picture_save(const picture_drawn *drawn, const char *path);

#endif
