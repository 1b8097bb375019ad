/* A file appears whole or not at all. Complaints on standard error are part of these tests. */
#include "support/close.h"

#include <dirent.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "files/whole_file.h"

static char folder[] = "/tmp/boilback-test-XXXXXX";

static void in_folder(char *path, size_t size, const char *name)
{
    snprintf(path, size, "%s/%s", folder, name);
}

static size_t files_in_folder(void)
{
    size_t n = 0;
    DIR *d = opendir(folder);
    assert_non_null(d);
    for (struct dirent *e; (e = readdir(d)) != NULL;)
        n += e->d_name[0] != '.';
    closedir(d);
    return n;
}

static void assert_holds(const char *path, const char *text)
{
    char got[100] = "";
    FILE *f = fopen(path, "r");
    assert_non_null(f);
    size_t n = fread(got, 1, sizeof got - 1, f);
    fclose(f);
    got[n] = '\0';
    assert_string_equal(got, text);
}

static void write_whole(const char *path, const char *text)
{
    whole_file w;
    assert_true(whole_file_open(&w, path));
    fputs(text, w.to);
    assert_true(whole_file_close(&w));
}

static void it_appears_only_at_the_end(void **state)
{
    (void)state;
    char path[100];
    whole_file w;
    in_folder(path, sizeof path, "new.csv");
    assert_true(whole_file_open(&w, path));
    fputs("text", w.to);
    assert_int_not_equal(access(path, F_OK), 0);
    assert_true(whole_file_close(&w));
    assert_holds(path, "text");
    assert_int_equal(files_in_folder(), 1);
    unlink(path);
}

static void it_keeps_the_mode_of_what_it_replaces(void **state)
{
    (void)state;
    char path[100];
    struct stat s;
    in_folder(path, sizeof path, "old.csv");
    write_whole(path, "old");
    chmod(path, 0640);
    write_whole(path, "new");
    assert_holds(path, "new");
    assert_int_equal(stat(path, &s), 0);
    assert_int_equal(s.st_mode & 0777, 0640);
    unlink(path);
}

static void a_link_stays_a_link(void **state)
{
    (void)state;
    char path[100], link[100];
    struct stat s;
    in_folder(path, sizeof path, "target.csv");
    in_folder(link, sizeof link, "link.csv");
    write_whole(path, "old");
    assert_int_equal(symlink("target.csv", link), 0);
    write_whole(link, "new");
    assert_int_equal(lstat(link, &s), 0);
    assert_true(S_ISLNK(s.st_mode));
    assert_holds(path, "new");
    unlink(path);
    unlink(link);
}

static void an_unwritable_folder_leaves_nothing(void **state)
{
    (void)state;
    char path[100];
    whole_file w;
    in_folder(path, sizeof path, "locked.csv");
    chmod(folder, 0500);
    if (geteuid() != 0) /* permissions do not bind the superuser */
        assert_false(whole_file_open(&w, path));
    chmod(folder, 0700);
    assert_int_equal(files_in_folder(), 0);
    assert_false(whole_file_open(&w, "/proc/boilback.csv"));
    assert_false(whole_file_close(&w));
    in_folder(path, sizeof path, "missing/new.csv");
    assert_false(whole_file_open(&w, path));
    assert_false(whole_file_open(&w, folder));
    assert_int_equal(files_in_folder(), 0);
}

/* A limit on the size of files stands for a full disk. */
static void a_full_disk_leaves_what_was_there(void **state)
{
    (void)state;
    char path[100];
    struct rlimit before, small;
    whole_file w;
    in_folder(path, sizeof path, "full.csv");
    write_whole(path, "old");
    assert_int_equal(getrlimit(RLIMIT_FSIZE, &before), 0);
    small = (struct rlimit){1000, before.rlim_max};
    signal(SIGXFSZ, SIG_IGN);
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &small), 0);
    assert_true(whole_file_open(&w, path));
    for (int i = 0; i < 20000; i++)
        fputs("too much ", w.to);
    bool closed = whole_file_close(&w);
    setrlimit(RLIMIT_FSIZE, &before);
    assert_false(closed);
    assert_holds(path, "old");
    assert_int_equal(files_in_folder(), 1);
    unlink(path);
}

static void a_device_is_not_replaced(void **state)
{
    (void)state;
    struct stat s;
    write_whole("/dev/null", "text");
    assert_int_equal(stat("/dev/null", &s), 0);
    assert_true(S_ISCHR(s.st_mode));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_appears_only_at_the_end),
        cmocka_unit_test(it_keeps_the_mode_of_what_it_replaces),
        cmocka_unit_test(a_link_stays_a_link),
        cmocka_unit_test(an_unwritable_folder_leaves_nothing),
        cmocka_unit_test(a_full_disk_leaves_what_was_there),
        cmocka_unit_test(a_device_is_not_replaced),
    };
    if (mkdtemp(folder) == NULL)
        return 1;
    int failed = cmocka_run_group_tests_name("whole_file", tests, NULL, NULL);
    rmdir(folder);
    return failed;
}
