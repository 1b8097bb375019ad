// The case of recovery.c from C++: what has to be freed is owned by an object. SI units.
//
//     c++ recovery.cpp $(pkg-config --cflags --libs boilback) -o recovery
#include <boilback.h>

#include <cstdio>
#include <stdexcept>

namespace {

void check(boil_outcome outcome)
{
    if (outcome != BOIL_OK)
        throw std::runtime_error(boil_outcome_text(outcome));
}

class schedule {
public:
    explicit schedule(double duration_s) { boil_schedule_init(&of, duration_s); }
    ~schedule() { boil_schedule_free(&of); }
    schedule(const schedule &) = delete;
    schedule &operator=(const schedule &) = delete;
    void add(const boil_action &action) { check(boil_schedule_add(&of, &action)); }
    boil_schedule of;
};

class history {
public:
    history(const boil_plant &plant, const schedule &s)
    {
        const boil_run_options options = boil_run_options_default();
        check(boil_run(&plant, &s.of, &options, &of));
    }
    ~history() { boil_history_free(&of); }
    history(const history &) = delete;
    history &operator=(const history &) = delete;
    boil_history of;
};

boil_plant box_over_a_burner()
{
    boil_plant plant = boil_plant_default();
    plant.tank.length_m = 1.8;
    plant.tank.width_m = 0.9;
    plant.tank.depth_m = 0.75;
    plant.tank.level_m = 0.5;
    plant.charge = boil_initial_charge{{0.80, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, 413.15, 0};
    plant.heater.input_W = 97e3;
    return plant;
}

} // namespace

int main()
{
    try {
        schedule s(1800);
        boil_action action = {};
        action.time_s = 300;
        action.kind = BOIL_ACTION_LOAD;
        action.is.load = boil_load_default();
        action.is.load.mass_kg = 35;
        action.is.load.size_m = 0.006;
        s.add(action);
        const history h(box_over_a_burner(), s);
        std::printf("boilback %s: the boil is back after %.0f s\n", boil_version(), h.of.loads[0].recovery_s);
    } catch (const std::exception &problem) {
        std::fprintf(stderr, "recovery: %s\n", problem.what());
        return 1;
    }
    return 0;
}
