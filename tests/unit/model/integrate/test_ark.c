/* The linearly implicit step: its order whatever matrix it is given, against exact solutions of a published problem, how far it is
   stable, and what it keeps. */
#include <stdlib.h>
#include <string.h>

#include "support/close.h"

#include "integrate/ark.h"
#include "integrate/fehlberg.h"

/* Kaps' problem [Kaps 1981, as in Kennedy & Carpenter, Appl. Numer. Math. 44 (2003) 139, section 5, from memory]:
     y0' = -(1/e + 2) y0 + y1^2/e,  y1' = y0 - y1 - y1^2,  exactly  y0 = exp(-2t), y1 = exp(-t), whatever e. */
static boil_outcome kaps(double t, const double y[], double dydt[], void *stiffness)
{
    (void)t;
    double by = *(double *)stiffness;
    dydt[0] = -(by + 2) * y[0] + by * y[1] * y[1];
    dydt[1] = y[0] - y[1] - y[1] * y[1];
    return BOIL_OK;
}

static const double ones[] = {1, 1};

static boil_system kaps_with(double *stiffness)
{
    return (boil_system){.unknowns = 2,
                         .rates = kaps,
                         .context = stiffness,
                         .size = ones,
                         .sums_first = 2,
                         .sums_end = 2,
                         .leads = 2,
                         .lead = {0, 1},
                         .blocks_first = 2};
}

typedef void spoiling(boil_jacobian *j);

typedef struct {
    boil_step step;
    double *room;
} stepper;

static stepper begin(size_t unknowns)
{
    stepper s;
    s.room = calloc(BOIL_STEP_ROOM * unknowns, sizeof(double));
    assert_non_null(s.room);
    boil_step_init(&s.step, s.room, unknowns);
    return s;
}

static bool take(stepper *s, const boil_system *of, double t, double h, spoiling *spoil)
{
    boil_step *p = &s->step;
    assert_true(boil_system_rates(of, t, p->y0, p->f0));
    boil_jacobian_take(&p->jacobian, of, t, p->y0, p->f0, p->trial, p->error);
    if (spoil != NULL)
        spoil(&p->jacobian);
    if (!boil_ark_step(p, of, t, h))
        return false;
    memcpy(p->y0, p->y1, of->unknowns * sizeof(double));
    return true;
}

/* Worst error at t = 1; infinite where it blew up. */
static double kaps_error(double stiffness, int steps, spoiling *spoil)
{
    boil_system of = kaps_with(&stiffness);
    stepper s = begin(2);
    s.step.y0[0] = s.step.y0[1] = 1;
    bool told = true;
    for (int i = 0; i < steps && told; i++)
        told = take(&s, &of, (double)i / steps, 1.0 / steps, spoil);
    double off = fmax(fabs(s.step.y0[0] - exp(-2)), fabs(s.step.y0[1] - exp(-1)));
    free(s.room);
    return told ? off : HUGE_VAL;
}

static void none(boil_jacobian *j)
{
    memset(j->lead, 0, sizeof j->lead);
}

static void third_too_large(boil_jacobian *j)
{
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < 2; k++)
            j->lead[i][k] *= 1.3;
}

static void one_of_wrong_sign(boil_jacobian *j)
{
    j->lead[0][1] = -j->lead[0][1];
    j->lead[1][1] = -j->lead[1][1];
}

static void one_missing(boil_jacobian *j)
{
    j->lead[0][1] = j->lead[1][1] = 0;
}

static void order_is_four_whatever_the_matrix(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        spoiling *spoil;
    } cases[] = {{"whole", NULL},
                 {"none", none},
                 {"a third too large", third_too_large},
                 {"one column of the wrong sign", one_of_wrong_sign},
                 {"one column missing", one_missing}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        double coarse = kaps_error(1, 40, cases[i].spoil), fine = kaps_error(1, 80, cases[i].spoil);
        print_message("matrix %s: %.2e, %.2e, order %.2f\n", cases[i].name, coarse, fine, log2(coarse / fine));
        assert_close(log2(coarse / fine), 4, 0, 0.3);
    }
}

/* With y0 answering up to a hundred thousand times as fast as the solution moves, explicit steps of this length blow up; with the
   Jacobian, taken by differences, the error still falls by more than two when steps are halved. (Stiff, the order is less than
   four: so Kennedy & Carpenter find it for this very problem.) */
static void stiffness_costs_no_stability(void **state)
{
    (void)state;
    for (double stiffness = 1e2; stiffness < 2e5; stiffness *= 10) {
        double coarse = kaps_error(stiffness, 20, NULL), fine = kaps_error(stiffness, 40, NULL);
        print_message("stiffness %.0e: %.2e, %.2e\n", stiffness, coarse, fine);
        assert_true(coarse < 0.01 && fine < coarse / 2);
        assert_false(kaps_error(stiffness, 20, none) < 1);
    }
}

/* The error that the step tells is that of the last stage where this is the larger: of third order, it falls by eight when the step is
   halved, the pair's by sixteen. */
static double told_error(double h)
{
    double stiffness = 1;
    boil_system of = kaps_with(&stiffness);
    stepper s = begin(2);
    s.step.y0[0] = s.step.y0[1] = 1;
    assert_true(take(&s, &of, 0, h, NULL));
    double off = hypot(s.step.error[0], s.step.error[1]);
    free(s.room);
    return off;
}

static void told_error_falls_with_the_step(void **state)
{
    (void)state;
    double ratio = told_error(0.05) / told_error(0.025);
    print_message("told error falls by %.1f\n", ratio);
    assert_true(ratio > 7.5 && ratio < 18);
}

/* Two leads, a sum, and two blocks: a chain of cells that cool into a bath, which the sum counts. The cells' exact sum with the bath is
   what it was. */
static boil_outcome cooling(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)context;
    double out = 0;
    for (int b = 0; b < 2; b++) {
        const double *cell = y + 3 + 2 * b;
        double through = 40 * (cell[1] - cell[0]), off = (b + 1) * 8 * (cell[0] - y[0]) * (1 + cell[0] / 10);
        dydt[3 + 2 * b] = through - off;
        dydt[4 + 2 * b] = -through;
        out += off;
    }
    double lost = 5 * (y[0] - y[1]) + y[0] * y[0] / 20;
    dydt[0] = out - lost;
    dydt[1] = 5 * (y[0] - y[1]);
    dydt[2] = y[0] * y[0] / 20;
    return BOIL_OK;
}

static size_t two_cells(size_t number, void *context)
{
    (void)context;
    return number < 2 ? 2 : 0;
}

static const double seven_ones[] = {1, 1, 1, 1, 1, 1, 1};

static const boil_system chain = {.unknowns = 7,
                                  .rates = cooling,
                                  .size = seven_ones,
                                  .sums_first = 2,
                                  .sums_end = 3,
                                  .leads = 2,
                                  .lead = {0, 1},
                                  .blocks_first = 3,
                                  .block = two_cells};

static const double chain_start[] = {1, 0.5, 0, 3, 4, 5, 2};

static void chain_after(double to[], int steps)
{
    stepper s = begin(7);
    memcpy(s.step.y0, chain_start, sizeof chain_start);
    for (int i = 0; i < steps; i++)
        assert_true(take(&s, &chain, 0, 1.0 / steps, NULL));
    memcpy(to, s.step.y0, sizeof chain_start);
    free(s.room);
}

static void chain_by_explicit_steps(double to[], int steps)
{
    stepper s = begin(7);
    memcpy(s.step.y0, chain_start, sizeof chain_start);
    for (int i = 0; i < steps; i++) {
        assert_true(boil_system_rates(&chain, 0, s.step.y0, s.step.f0));
        assert_true(boil_fehlberg_step(&s.step, &chain, 0, 1.0 / steps));
        memcpy(s.step.y0, s.step.y1, sizeof chain_start);
    }
    memcpy(to, s.step.y0, sizeof chain_start);
    free(s.room);
}

static double distance(const double a[], const double b[])
{
    double most = 0;
    for (int i = 0; i < 7; i++)
        most = fmax(most, fabs(a[i] - b[i]));
    return most;
}

static void blocks_and_sums_are_of_fourth_order_and_nothing_is_lost(void **state)
{
    (void)state;
    double exact[7], coarse[7], fine[7], all = 0, before = 0;
    chain_by_explicit_steps(exact, 4000);
    chain_after(coarse, 160);
    chain_after(fine, 320);
    double order = log2(distance(coarse, exact) / distance(fine, exact));
    print_message("blocks: %.1e, %.1e, order %.2f\n", distance(coarse, exact), distance(fine, exact), order);
    assert_close(order, 4, 0, 0.3);
    for (int i = 0; i < 7; i++) {
        all += coarse[i];
        before += chain_start[i];
    }
    assert_close(all, before, 0, 1e-13);
}

/* x = (I - w A)^-1 r by the blocks, put back into (I - w A) x by differences of the rates themselves. */
static void jacobian_solves_what_it_says(void **state)
{
    (void)state;
    const double w = 0.03, r[7] = {1, -2, 7, 0.5, 3, -1, 2};
    stepper s = begin(7);
    boil_step *p = &s.step;
    double x[7];
    memcpy(p->y0, chain_start, sizeof chain_start);
    assert_true(boil_system_rates(&chain, 0, p->y0, p->f0));
    boil_jacobian_take(&p->jacobian, &chain, 0, p->y0, p->f0, p->trial, p->error);
    assert_true(boil_jacobian_factor(&p->jacobian, &chain, w));
    memcpy(x, r, sizeof r);
    boil_jacobian_solve(&p->jacobian, &chain, x);
    assert_true(x[2] == r[2]);
    const double d = 1e-6;
    double moved[7], back[7] = {0};
    for (int k = 0; k < 7; k++) {
        if (k == 2)
            continue;
        memcpy(p->trial, p->y0, sizeof moved);
        p->trial[k] += d;
        assert_true(boil_system_rates(&chain, 0, p->trial, moved));
        for (int i = 0; i < 7; i++)
            back[i] += (moved[i] - p->f0[i]) / d * x[k];
    }
    for (int i = 0; i < 7; i++)
        if (i != 2)
            assert_close(x[i] - w * back[i], r[i], 0, 1e-5);
    double own[7];
    boil_jacobian_own(&p->jacobian, &chain, own);
    assert_close(own[4], -40, 1e-5, 0);
    assert_true(own[2] == 0);
    free(s.room);
}

/* A puddle of m kg that holds H: it evaporates by what a kilogram holds, and takes heat up. */
static boil_outcome puddle(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)context;
    double h = y[1] / y[0];
    dydt[0] = -0.2 * h;
    dydt[1] = 40 - 7 * h;
    return BOIL_OK;
}

/* All that a step keeps lies in its room, and nothing of it on anything else. */
static void nothing_in_the_room_lies_on_anything(void **state)
{
    (void)state;
    enum { UNKNOWNS = 7, ROWS = BOIL_SYSTEM_LEADS_MAX * UNKNOWNS, BLOCKS = BOIL_SYSTEM_BLOCK_MAX * UNKNOWNS };
    stepper s = begin(UNKNOWNS);
    boil_step *p = &s.step;
    boil_jacobian *j = &p->jacobian;
    double *const lists[] = {p->y0,       p->f0,       p->y1,         p->error, p->f1,         p->trial,
                             j->by_leads, j->on_leads, j->with_leads, j->own,   j->own_inverse};
    const size_t rooms[] = {UNKNOWNS, UNKNOWNS, UNKNOWNS, UNKNOWNS, UNKNOWNS, UNKNOWNS, ROWS, ROWS, ROWS, BLOCKS, BLOCKS};
    enum { LISTS = sizeof lists / sizeof lists[0] };
    bool taken[BOIL_STEP_ROOM * UNKNOWNS] = {false};
    enum { LATER = BOIL_STEP_STAGES - 1 }; /* the first stage has moved nowhere, and its rates are those at the start */
    assert_true(p->f[0] == p->f0 && p->g[0] == NULL);
    for (size_t i = 0; i < LISTS + 2 * LATER; i++) {
        double *const *stages = i < LISTS + LATER ? p->f : p->g;
        const double *list = i < LISTS ? lists[i] : stages[1 + (i - LISTS) % LATER];
        for (size_t k = 0; k < (i < LISTS ? rooms[i] : UNKNOWNS); k++) {
            size_t at = (size_t)(list + k - s.room);
            assert_true(at < BOIL_STEP_ROOM * UNKNOWNS && !taken[at]);
            taken[at] = true;
        }
    }
    free(s.room);
}

/* A thermometer of a thousandth of a second on a body that cools ever slower: y' = -y^2, x' = (y - x)/lag. */
static boil_outcome read_by_a_thermometer(double t, const double y[], double dydt[], void *lag_s)
{
    (void)t;
    dydt[0] = -y[0] * y[0];
    dydt[1] = (y[0] - y[1]) / *(double *)lag_s;
    return BOIL_OK;
}

/* What only follows goes as it would among the leads; of it no look is needed. */
static void a_follower_goes_as_a_lead_would(void **state)
{
    (void)state;
    double lag_s = 1e-3;
    boil_system as_lead = kaps_with(&lag_s), following;
    as_lead.rates = read_by_a_thermometer;
    following = as_lead;
    following.leads = following.followers = 1;
    following.follower[0] = 1;
    following.lag_s[0] = lag_s;
    stepper a = begin(2), b = begin(2);
    a.step.y0[0] = b.step.y0[0] = 1;
    a.step.y0[1] = b.step.y0[1] = 0.9;
    for (int i = 0; i < 20; i++) {
        double own[2];
        assert_true(take(&a, &as_lead, 0, 0.05, NULL) && take(&b, &following, 0, 0.05, NULL));
        assert_close(b.step.y0[0], a.step.y0[0], 1e-12, 0);
        assert_close(b.step.y0[1], a.step.y0[1], 0, 1e-9);
        boil_jacobian_own(&b.step.jacobian, &following, own);
        assert_close(own[1], -1 / lag_s, 0, 0);
    }
    assert_close(b.step.y0[0], 0.5, 0, 1e-6);             /* 1/(1 + t) */
    assert_close(b.step.y0[1], 0.5 + lag_s / 4, 0, 1e-5); /* and so far behind */
    free(a.room);
    free(b.room);
}

/* Two tanks, each of two layers that take from one lead in shares of their own: linear, so that what the blocks tell of themselves is
   all there is to know. */
static const double layer_takes[4] = {3, 0.5, -2, 7};

static boil_outcome layered(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)context;
    dydt[0] = -y[0];
    for (int k = 0; k < 4; k++) {
        dydt[0] -= layer_takes[k] * y[1 + k];
        dydt[1 + k] = (k + 1) * y[0] - (5 + k) * y[1 + k] + 2 * y[1 + (k ^ 1)];
    }
    return BOIL_OK;
}

static void layers_tell(size_t number, double t, const double y[], double own[], double takes[], void *context)
{
    (void)t;
    (void)y;
    (void)context;
    for (int i = 0; i < 2; i++) {
        takes[i] = layer_takes[2 * number + (size_t)i];
        for (int k = 0; k < 2; k++)
            own[i * BOIL_SYSTEM_BLOCK_MAX + k] = i == k ? -(double)(5 + 2 * number + (size_t)i) : 2;
    }
}

/* One look for all of them, whose own slopes are told, is as good as one for each. */
static void blocks_that_tell_are_known_as_well(void **state)
{
    (void)state;
    const boil_system by_looks = {.unknowns = 5,
                                  .rates = layered,
                                  .size = seven_ones,
                                  .sums_first = 5,
                                  .sums_end = 5,
                                  .leads = 1,
                                  .lead = {0},
                                  .blocks_first = 1,
                                  .block = two_cells};
    boil_system told = by_looks;
    told.slopes = layers_tell;
    const boil_system *const of[] = {&by_looks, &told};
    double x[2][5];
    for (int i = 0; i < 2; i++) {
        const double y[] = {2, 3, -1, 0.5, 4}, r[] = {1, 2, 3, 4, 5};
        stepper s = begin(5);
        boil_step *p = &s.step;
        memcpy(p->y0, y, sizeof y);
        memcpy(x[i], r, sizeof r);
        assert_true(boil_system_rates(of[i], 0, p->y0, p->f0));
        boil_jacobian_take(&p->jacobian, of[i], 0, p->y0, p->f0, p->trial, p->error);
        assert_true(boil_jacobian_factor(&p->jacobian, of[i], 0.1));
        boil_jacobian_solve(&p->jacobian, of[i], x[i]);
        free(s.room);
    }
    for (int k = 0; k < 5; k++)
        assert_close(x[1][k], x[0][k], 0, 1e-7);
}

/* Told for another amount and content, a matrix is what a look there gives: x = (I - w A)^-1 r of both. */
static void a_kept_matrix_goes_with_its_amount(void **state)
{
    (void)state;
    const double w = 0.03, there[] = {0.4, 2.5};
    const boil_system of = {.unknowns = 2,
                            .rates = puddle,
                            .size = ones,
                            .sums_first = 2,
                            .sums_end = 2,
                            .leads = 2,
                            .lead = {0, 1},
                            .amount = 0,
                            .content = 1,
                            .blocks_first = 2};
    double x[2][2];
    for (int carried = 0; carried < 2; carried++) {
        stepper s = begin(2);
        boil_step *p = &s.step;
        const double from[] = {2, 6};
        memcpy(p->y0, carried ? from : there, sizeof from);
        assert_true(boil_system_rates(&of, 0, p->y0, p->f0));
        boil_jacobian_take(&p->jacobian, &of, 0, p->y0, p->f0, p->trial, p->error);
        boil_jacobian_carry(&p->jacobian, &of, there);
        assert_true(boil_jacobian_factor(&p->jacobian, &of, w));
        x[carried][0] = 1;
        x[carried][1] = -3;
        boil_jacobian_solve(&p->jacobian, &of, x[carried]);
        free(s.room);
    }
    for (int i = 0; i < 2; i++)
        assert_close(x[1][i], x[0][i], 1e-5, 0);
    assert_true(fabs(x[0][0] - 1) > 0.01);
}

/* Where either of the two is no lead, or its amount is nothing, it stays what it was told for. */
static void a_matrix_without_both_is_left_alone(void **state)
{
    (void)state;
    const double there[] = {0.4, 2.5}, gone[] = {0, 2.5}, *to[] = {there, there, gone};
    const size_t leads[] = {1, 1, 2}, first[] = {0, 1, 0};
    for (size_t k = 0; k < sizeof leads / sizeof leads[0]; k++) {
        const boil_system of = {.unknowns = 2,
                                .rates = puddle,
                                .size = ones,
                                .sums_first = 2,
                                .sums_end = 2,
                                .leads = leads[k],
                                .lead = {first[k], 1},
                                .amount = 0,
                                .content = 1,
                                .blocks_first = 2};
        stepper s = begin(2);
        boil_step *p = &s.step;
        p->y0[0] = 2;
        p->y0[1] = 6;
        assert_true(boil_system_rates(&of, 0, p->y0, p->f0));
        boil_jacobian_take(&p->jacobian, &of, 0, p->y0, p->f0, p->trial, p->error);
        boil_jacobian before = p->jacobian;
        boil_jacobian_carry(&p->jacobian, &of, to[k]);
        assert_memory_equal(before.lead, p->jacobian.lead, sizeof before.lead);
        assert_true(p->jacobian.at.amount == 2 && p->jacobian.at.held == 3);
        free(s.room);
    }
}

static boil_outcome decaying(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)context;
    dydt[0] = -y[0];
    return BOIL_OK;
}

/* In so short a step what the fourth order leaves, about 1e-3 h^5, is less than rounding: were a coefficient off in its ninth
   place, it would show. */
static void a_short_step_is_exact(void **state)
{
    (void)state;
    const double h = 0.003;
    const boil_system of = {
        .unknowns = 1, .rates = decaying, .size = ones, .sums_first = 1, .sums_end = 1, .leads = 1, .blocks_first = 1};
    stepper s = begin(1);
    s.step.y0[0] = 1;
    assert_true(take(&s, &of, 0, h, NULL));
    print_message("off by %.1e\n", s.step.y0[0] - exp(-h));
    assert_close(s.step.y0[0], exp(-h), 0, 2e-15);
    free(s.room);
}

/* y' = (y0 + y1, y0): with w = 1 the first pivot of I - w A is 0, and only the other row solves it. */
static boil_outcome crossed(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)context;
    dydt[0] = y[0] + y[1];
    dydt[1] = y[0];
    return BOIL_OK;
}

/* I - A = (0, -1; -1, 1): from (2, 5) follows x1 = -2, and x0 = x1 - 5 = -7. */
static void a_pivot_of_nothing_is_passed_over(void **state)
{
    (void)state;
    boil_system of = kaps_with(NULL);
    of.rates = crossed;
    stepper s = begin(2);
    boil_step *p = &s.step;
    double x[2] = {2, 5};
    assert_true(boil_system_rates(&of, 0, p->y0, p->f0));
    boil_jacobian_take(&p->jacobian, &of, 0, p->y0, p->f0, p->trial, p->error);
    assert_true(boil_jacobian_factor(&p->jacobian, &of, 1));
    boil_jacobian_solve(&p->jacobian, &of, x);
    assert_close(x[0], -7, 1e-6, 0);
    assert_close(x[1], -2, 1e-6, 0);
    free(s.room);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(order_is_four_whatever_the_matrix),
        cmocka_unit_test(stiffness_costs_no_stability),
        cmocka_unit_test(told_error_falls_with_the_step),
        cmocka_unit_test(blocks_and_sums_are_of_fourth_order_and_nothing_is_lost),
        cmocka_unit_test(jacobian_solves_what_it_says),
        cmocka_unit_test(a_pivot_of_nothing_is_passed_over),
        cmocka_unit_test(nothing_in_the_room_lies_on_anything),
        cmocka_unit_test(a_follower_goes_as_a_lead_would),
        cmocka_unit_test(blocks_that_tell_are_known_as_well),
        cmocka_unit_test(a_kept_matrix_goes_with_its_amount),
        cmocka_unit_test(a_matrix_without_both_is_left_alone),
        cmocka_unit_test(a_short_step_is_exact),
    };
    return cmocka_run_group_tests_name("ark", tests, NULL, NULL);
}
