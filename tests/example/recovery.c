/* How long one load stops the boil: the installed library used from another program. SI units.

       cc recovery.c $(pkg-config --cflags --libs boilback) -o recovery */
#include <boilback.h>
#include <stdio.h>

int main(void)
{
    /* A box of 1.8 x 0.9 m, 0.5 m full, whose blend boils at 140 degC, over a gas burner. */
    boil_plant plant = boil_plant_default();
    plant.tank.length_m = 1.8;
    plant.tank.width_m = 0.9;
    plant.tank.depth_m = 0.75;
    plant.tank.level_m = 0.5;
    plant.charge = (boil_initial_charge){.blend = {0.80, 0.15, 0.05}, .basis = BOIL_INITIAL_BY_BOILING_POINT, .value = 413.15};
    plant.heater.input_W = 97e3;

    /* After five minutes 35 kg of 6 mm plate go in at 20 degC, and stay. */
    boil_action action = {.time_s = 300, .kind = BOIL_ACTION_LOAD, .is.load = boil_load_default()};
    action.is.load.mass_kg = 35;
    action.is.load.size_m = 0.006;

    const char *problem = boil_plant_problem(&plant);
    if (problem == NULL)
        problem = boil_load_problem(&action.is.load);
    if (problem != NULL) {
        fprintf(stderr, "recovery: %s\n", problem);
        return 2;
    }

    boil_schedule schedule;
    boil_history history;
    boil_run_options options = boil_run_options_default();
    boil_schedule_init(&schedule, 1800);
    boil_outcome result = boil_schedule_add(&schedule, &action);
    if (result == BOIL_OK)
        result = boil_run(&plant, &schedule, &options, &history);
    boil_schedule_free(&schedule);
    if (result != BOIL_OK) {
        fprintf(stderr, "recovery: %s\n", boil_outcome_text(result));
        return 1;
    }
    printf("boilback " BOIL_VERSION_TEXT ": the boil is back after %.0f s\n", history.loads[0].recovery_s);
    boil_history_free(&history);
    return 0;
}
