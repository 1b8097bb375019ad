# boilback -- see README.md. Targets: all demo check test validate sanitize faults fuzz bench install uninstall dist clean.
.DEFAULT_GOAL := all
# The version stands in the public header only; the date of it here.
VERSION  := $(shell sed -n 's/^.define BOIL_VERSION_TEXT "\(.*\)"/\1/p' model/boilback.h)
RELEASED := 2026-11-28

CC      ?= cc
PREFIX  ?= /usr/local
BUILD   ?= build

# Nothing here is switched off. A warning stops the build of the tests; it does not stop the program of somebody whose compiler
# knows one more.
WERROR := $(if $(filter check test sanitize random random-sizes random-plans honest-fit $(BUILD)/tests/%,$(MAKECMDGOALS)),-Werror)
WARN := -Wall -Wextra -Wpedantic $(WERROR) \
        -Wconversion -Wsign-conversion -Wshadow -Wdouble-promotion \
        -Wstrict-prototypes -Wmissing-prototypes -Wold-style-definition \
        -Wpointer-arith -Wcast-qual -Wwrite-strings -Wundef -Wvla -Wformat=2
# No contraction and no fast-math: results must not depend on the optimiser.
CFLAGS   ?= -O2 -g
BASE     := -std=c17 -ffp-contract=off $(WARN) -D_POSIX_C_SOURCE=200809L -Imodel
# Runs of a study share the processors where the compiler can; nowhere do results depend on it.
OPENMP   := $(shell echo 'int main(void) { return 0; }' | $(CC) -fopenmp -x c -o /dev/null - 2>/dev/null && echo -fopenmp)
BASE     += $(OPENMP)
GSL      := -lgsl -lgslcblas -lm
LDLIBS   := $(OPENMP) $(GSL)
# Who built it: where that is not the compiler that wrote what tests expect, last digits may differ (tests/same_text.sh).
BUILT_BY := $(shell echo '__VERSION__ __x86_64__' | $(CC) -E -P - 2>/dev/null)
export BUILT_BY
SANITIZE := -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer

# `make V=1` shows the commands.
QUIET := $(if $(V),,@)
SAY   := @$(if $(V),:,echo)

MODEL_SRC := $(sort $(shell find model -name "*.c"))
PROG_SRC  := $(sort $(shell find src -name "*.c" -not -path "src/manual/*"))
TEST_SRC  := $(sort $(shell find tests/unit -name "test_*.c"))
# Drawn scenarios: one test of many files, the longest, so that it begins first.
RANDOM_OBJ := $(patsubst %.c,$(BUILD)/%.o,$(sort $(wildcard tests/random/*.c)))
RANDOM    := $(BUILD)/tests/random/test_random

MODEL_OBJ := $(MODEL_SRC:%.c=$(BUILD)/%.o)
PROG_OBJ  := $(PROG_SRC:%.c=$(BUILD)/%.o)
# What the program writes into a page, each file as a list of its lines: src/x/y.js is `const char *const y_js[]`.
PAGE_SRC  := $(sort $(shell find src -name "*.js" -o -name "*.css" -o -name "stage.html"))
PROG_OBJ  += $(PAGE_SRC:%=$(BUILD)/%.o)
# What tests of src/ link: everything but main.
PARTS_OBJ := $(filter-out $(BUILD)/src/main.o,$(PROG_OBJ))
# The model against what others print and measured: one table of all, and a test.
VALIDATE_OBJ := $(patsubst %.c,$(BUILD)/%.o,$(sort $(wildcard tests/validate/*.c)))
VALIDATE  := $(BUILD)/tests/validate/validate
BENCH_OBJ := $(patsubst %.c,$(BUILD)/%.o,$(sort $(wildcard tests/bench/*.c)))
TESTS     := $(RANDOM) $(TEST_SRC:tests/%.c=$(BUILD)/tests/%) $(VALIDATE)
PROGRAM   := $(BUILD)/boilback
LIBRARY   := $(BUILD)/libboilback.a
# A run calls across the model's files a million times: where the compiler can, the program has them as one piece: a run takes 9 %
# fewer instructions. With flags of somebody's own it has the library's objects.
ifeq ($(origin CFLAGS),file)
WHOLE     := $(shell echo 'int main(void) { return 0; }' | $(CC) -O3 -flto=2 -x c -o /dev/null - 2>/dev/null && echo -O3 -flto=2)
endif
WHOLE_OBJ := $(if $(WHOLE),$(MODEL_SRC:%.c=$(BUILD)/whole/%.o),$(LIBRARY))
# Its name carries what may change in an incompatible way: until 1.0.0 that is the minor number.
SHARED    := libboilback.so.$(basename $(VERSION))
SHARED_LIBRARY := $(BUILD)/$(SHARED)
# Writes manual pages and completions from the program's own tables.
WRITE_OBJ := $(patsubst %.c,$(BUILD)/%.o,$(sort $(wildcard src/manual/*.c)))
WRITE     := $(BUILD)/src/manual/write

.PHONY: all demo check test validate sanitize bench bench-peer install uninstall stage dist clean tools test-tools packaged layering golden terminal faults fuzz random random-sizes random-plans honest-fit mutate coverage browser

# Two cores are the least we plan for; a -j of the caller's own is left alone.
JOBS = $(if $(filter -j% --jobserver%,$(MAKEFLAGS)),,-j2)

all: tools
	@$(MAKE) --no-print-directory $(JOBS) $(PROGRAM) $(SHARED_LIBRARY)

$(LIBRARY): $(MODEL_OBJ)
	@rm -f $@
	$(QUIET)$(AR) rcs $@ $^

$(SHARED_LIBRARY): $(MODEL_OBJ)
	$(QUIET)$(CC) -shared -Wl,-soname,$(SHARED) $(CFLAGS) $(LDFLAGS) $^ $(GSL) -o $@

$(PROGRAM): $(PROG_OBJ) $(WHOLE_OBJ)
	$(QUIET)$(CC) $(CFLAGS) $(WHOLE) $(LDFLAGS) $^ $(LDLIBS) -o $@

$(BUILD)/%.o: %.c Makefile
	@mkdir -p $(@D)
	$(SAY) cc $<
	$(QUIET)$(CC) $(BASE) $(CFLAGS) -MMD -MP -c $< -o $@

$(BUILD)/whole/%.o: %.c Makefile
	@mkdir -p $(@D)
	$(SAY) cc $< as part of a whole
	$(QUIET)$(CC) $(BASE) $(CFLAGS) $(WHOLE) -MMD -MP -c $< -o $@

$(PAGE_SRC:%=$(BUILD)/%.c): $(BUILD)/%.c: % Makefile
	@mkdir -p $(@D)
	$(QUIET){ name=$$(echo $(<F) | tr . _); echo "extern const char *const $$name[];"; echo "const char *const $$name[] = {"; \
	sed 's/\\/\\\\/g; s/"/\\"/g; s/^ *//; s/.*/"&\\n",/' $<; echo "NULL};"; } | sed '1i #include <stddef.h>' >$@

$(PAGE_SRC:%=$(BUILD)/%.o): %.o: %.c
	$(QUIET)$(CC) $(BASE) $(CFLAGS) -c $< -o $@

$(BUILD)/tests/%: $(BUILD)/tests/%.o $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $< $(PARTS_OBJ) $(LIBRARY) $(LDLIBS) -lcmocka -o $@

$(BUILD)/tests/%.o: BASE += -Isrc -Itests

$(RANDOM): $(RANDOM_OBJ) $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $^ $(LDLIBS) -lcmocka -o $@

# Allocations of the library, and of the program, go through the test.
WRAPS := -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc,--wrap=free
$(BUILD)/tests/unit/model/test_refused_memory $(BUILD)/tests/unit/model/simulate/test_workspace: private LDFLAGS += $(WRAPS)
$(BUILD)/tests/unit/src/test_refused_memory: private LDFLAGS += $(WRAPS),--wrap=open_memstream

# What a bare Debian lacks is installed; where that is not allowed, it is named.
PACKAGES := build-essential libgsl-dev
TEST_PACKAGES := $(PACKAGES) libcmocka-dev gnuplot-nox pkg-config python3

tools:
	@tests/install_tools.sh "$(CC)" "gsl/gsl_roots.h" "" "$(PACKAGES)"

test-tools:
	@tests/install_tools.sh "$(CC)" "gsl/gsl_odeiv2.h cmocka.h" "gnuplot pkg-config python3" "$(TEST_PACKAGES)"

demo: all
	$(PROGRAM) run scenarios/normal-shift.bath

# Unit and command-line tests, plain and then, beside those of what is installed, under the address and undefined-behaviour
# sanitizers. All of them run, and the last line counts all, whatever fails.
check: test-tools layering
	@rm -rf $(BUILD)/tests/results $(BUILD)/sanitize/tests/results
	@status=0; more="$(MAKE) --no-print-directory $(JOBS)"; $$more test || status=1; \
	$$more packaged & beside=$$!; $$more sanitize || status=1; wait $$beside || status=1; \
	tests/count.sh $(BUILD) $(BUILD)/sanitize || status=1; exit $$status

# What the papers show and name, and the checks themselves: the same whatever the build.
PAPERS := readme checks developers faults

test: $(PROGRAM) $(TESTS)
	@tests/run_tests.sh $(BUILD) "$(PAPERS)" $(TESTS)

# What `make install` leaves works, also elsewhere, and goes away again; manual and completions know every word; JSON is as
# its schemas say; what `make dist` packs builds by itself.
packaged: stage
	@tests/packaged.sh $(BUILD)

sanitize: test-tools
	@$(MAKE) --no-print-directory $(JOBS) BUILD=$(BUILD)/sanitize PAPERS= CFLAGS="-O1 -g $(SANITIZE)" test

# Every allocation refused, every call for a file failing, every file cut off at some hundred lengths, signals at some moments, for
# every command: hours; `make test` tries a few of each.
faults: $(PROGRAM)
	@tests/faults.sh --whole

# Each target of tests/fuzz for so long: `make fuzz SECONDS=900`. For clang alone; it is installed only where this is asked for.
FUZZERS := scenario quantity options csv run
SECONDS ?= 30
FUZZ_PACKAGES := $(PACKAGES) clang libclang-rt-14-dev

fuzz:
	@tests/install_tools.sh clang "gsl/gsl_roots.h" "" "$(FUZZ_PACKAGES)"
	@$(MAKE) --no-print-directory $(JOBS) BUILD=$(BUILD)/fuzz CC=clang OPENMP= CFLAGS="-O1 -g $(SANITIZE) -fsanitize=fuzzer-no-link" \
	    $(FUZZERS:%=$(BUILD)/fuzz/tests/fuzz/%)
	@tests/fuzz.sh $(BUILD)/fuzz $(SECONDS) $(FUZZERS)

$(BUILD)/tests/fuzz/%: $(BUILD)/tests/fuzz/%.o $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) -fsanitize=fuzzer $< $(PARTS_OBJ) $(LIBRARY) $(LDLIBS) -o $@

layering:
	@tests/layering.sh

# The replay as a browser shows it; PICTURES=FOLDER keeps what it looked like, for a person to look at.
browser: $(PROGRAM)
	@tests/browser.sh $(BUILD) $(PICTURES)

# The table, to read; beside it as CSV and, where gnuplot is, a picture.
validate: $(VALIDATE)
	@VALIDATE_TO=$(BUILD)/validate $(VALIDATE) >$(BUILD)/validate.log 2>&1; ended=$$?; cat $(BUILD)/validate.txt; \
	if command -v gnuplot >/dev/null; then gnuplot -c plots/validate.gp $(BUILD)/validate.csv $(BUILD)/validate.svg 2>/dev/null || ended=1; fi; \
	if [ $$ended -ne 0 ]; then cat $(BUILD)/validate.log >&2; fi; exit $$ended

$(VALIDATE): $(VALIDATE_OBJ) $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $^ $(LDLIBS) -lcmocka -o $@

# The screen of practise, in terminals: half a minute, where tmux is.
terminal: $(PROGRAM)
	@tests/terminal.sh $(PROGRAM)

golden: $(PROGRAM)
	@tests/run_cli.sh --golden $(PROGRAM)

# SEEDS=0-2000 make random; without it as the tests have it.
random: $(PROGRAM) $(RANDOM)
	$(RANDOM)

# Whether what `size` answers holds, and no answer denies another, on 200 plants: a quarter of an hour; and on 50 that what holds the
# boil does and 3 % less does not, under a lid and without, and that the makeup keeps strength and level: four seconds.
SIZES := $(BUILD)/tests/unit/src/commands/size/test_random_sizes
HOLDS := $(BUILD)/tests/unit/model/analysis/test_steady_state
random-sizes: $(SIZES) $(HOLDS)
	PLANTS=200 $(SIZES)
	PLANTS=50 $(HOLDS)

# Whether what `plan` writes holds, for 100 lists of up to 30 jobs on 20 plants, and on 20 shifts that more positions, heat or time make it
# no later: some ten minutes.
PLANS := $(BUILD)/tests/unit/src/commands/plan/test_random_plans
random-plans: $(PLANS)
	LISTS=100 MORE=20 $(PLANS)

# Whether fit's intervals hold the truth as often as they say, on 200 logs: three minutes.
HONEST := $(BUILD)/tests/unit/src/commands/fit/test_honest_fit
honest-fit: $(HONEST)
	LOGS=200 $(HONEST)

# make mutate FILES="model/case/grading.c": what wrong operators and constants the tests let pass; without FILES of 200 of all, which
# takes hours and goes on where it was broken off. By hand, as is coverage.
mutate: test-tools
	@tests/mutate/mutate.sh $(BUILD) $(FILES)

coverage: test-tools
	@MAKE="$(MAKE)" tests/coverage/coverage.sh $(BUILD)

# Prints what runs, reading and studies cost, and writes it to $(BUILD)/bench.csv; instructions if valgrind is there.
bench: tools $(BUILD)/tests/bench/bench
	$(BUILD)/tests/bench/bench $(BUILD)/bench.csv

$(BUILD)/tests/bench/bench: private LDFLAGS += -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc
$(BUILD)/tests/bench/bench: $(BENCH_OBJ) $(PARTS_OBJ) $(WHOLE_OBJ)
	$(QUIET)$(CC) $(CFLAGS) $(WHOLE) $(LDFLAGS) $^ $(LDLIBS) -o $@

# The same runs by the library's steps and by an integrator of the distribution, if it has its development files (libsundials-dev):
# work and precision, to $(BUILD)/peer.csv, drawn if gnuplot is there.
PEER     := $(BUILD)/tests/peer/march.o $(BUILD)/tests/peer/trace.o
PEERLIBS := -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense
bench-peer: tools
	@if echo '#include <cvode/cvode.h>' | $(CC) $(CFLAGS) -E - >/dev/null 2>&1; then \
		$(MAKE) --no-print-directory $(BUILD)/tests/peer/ours $(BUILD)/tests/peer/peer && \
		tests/peer/peer.sh $(BUILD)/tests/peer/ours $(BUILD)/tests/peer/peer $(BUILD)/peer.csv && \
		{ ! command -v gnuplot >/dev/null || gnuplot -c plots/peer.gp $(BUILD)/peer.csv $(BUILD)/peer.svg; }; \
	else echo "bench-peer: no cvode/cvode.h, so there is nothing to compare with"; fi

$(BUILD)/tests/peer/ours: $(BUILD)/tests/peer/trace.o $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $^ $(LDLIBS) -o $@

$(BUILD)/tests/peer/peer: $(PEER) $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $^ $(PEERLIBS) $(LDLIBS) -o $@

# Nearly all of a run's time is spent in the model. With the flags of whoever sets his own.
ifeq ($(origin CFLAGS),file)
$(MODEL_OBJ): CFLAGS := -O3 -g
endif
# Seen from outside is what boilback.h declares, and nothing else.
$(MODEL_OBJ): BASE += -fvisibility=hidden -fPIC
$(PROG_OBJ) $(WRITE_OBJ): BASE += -Isrc
$(WRITE_OBJ): BASE += -DBOIL_RELEASED='"$(RELEASED)"'

$(WRITE): $(WRITE_OBJ) $(PARTS_OBJ) $(LIBRARY)
	$(QUIET)$(CC) $(CFLAGS) $(LDFLAGS) $^ $(LDLIBS) -o $@

# The tree to be installed, in $(BUILD)/stage.
stage: all
	@$(MAKE) --no-print-directory $(JOBS) $(WRITE)
	@src/packaging/stage.sh $(BUILD) $(VERSION) $(SHARED)

install: stage
	@src/packaging/install.sh $(BUILD)/stage "$(DESTDIR)$(PREFIX)"

uninstall:
	@src/packaging/uninstall.sh "$(DESTDIR)$(PREFIX)"

dist:
	@src/packaging/dist.sh $(BUILD) $(VERSION) $(RELEASED)

clean:
	rm -rf $(BUILD)

# Objects of tests are kept between builds.
.SECONDARY:

-include $(MODEL_OBJ:.o=.d) $(MODEL_SRC:%.c=$(BUILD)/whole/%.d) $(VALIDATE_OBJ:.o=.d) $(PROG_OBJ:.o=.d) $(WRITE_OBJ:.o=.d) $(TEST_SRC:tests/%.c=$(BUILD)/tests/%.d) $(RANDOM_OBJ:.o=.d) $(BENCH_OBJ:.o=.d) $(wildcard $(BUILD)/tests/peer/*.d) \
         $(FUZZERS:%=$(BUILD)/tests/fuzz/%.d)
