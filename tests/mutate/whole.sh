#!/bin/sh
# The files that the draw over everything is from: the model, and what grades and prints. Run from the top folder.
find model src/base src/describe src/commands src/pictures src/replay -name '*.c' | LC_ALL=C sort
