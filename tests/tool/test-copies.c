/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A job's way back from a shell: its copies, and what can be read of it when it is damaged. */
#include "shell.h"

#include <glib/gstdio.h>
#include <string.h>

/* The shell's words, line by line, without the last line feed. */
static char **
lines_of (const Said *said)
{
  g_autofree char *text = g_strchomp (g_strdup (said->out));

  return g_strsplit (text, "\n", -1);
}

static void
test_copies (void)
{
  g_auto (Said) none = { 0 }, first = { 0 }, same = { 0 }, both = { 0 }, found = { 0 };

  shell_tool_ends (0, "new job");
  shell_tool (&none, 0, "copies job");
  shell_assert_says (none.out, "No copy");
  shell_tool (&first, 0, "copies job --keep");
  shell_tool (&same, 0, "copies job --keep");
  g_assert_cmpstr (first.out, ==, same.out);
  shell_tool_ends (0, "record job note \"ran out of rods\"");
  shell_tool (&both, 0, "copies job --keep");

  g_auto (GStrv) lines = lines_of (&both);
  g_assert_cmpuint (g_strv_length (lines), ==, 2);
  g_assert_cmpint (strcmp (lines[0], lines[1]), >, 0); /* the newest first */
  const char *path = strchr (lines[0], '/');
  g_autofree char *check = g_strconcat ("check ", path, NULL);
  shell_tool_ends (0, check);

  /* Whatever became of the file. */
  shell_write ("job", "SQLite format 3");
  shell_tool_ends (1, "copies job --keep");
  shell_tool (&found, 0, "copies job");
  g_assert_cmpstr (found.out, ==, both.out);
}

static void
test_recover (void)
{
  g_auto (Said) cut = { 0 }, whole = { 0 }, summary = { 0 };
  g_autofree char *path = shell_path ("cut");

  shell_make_demo ();
  shell_tool (&whole, 0, "recover demo again");
  shell_assert_says (whole.out, "Kept: 198 piles, 30 shifts");
  shell_assert_says (whole.out, "Nothing is known to be lost");
  shell_tool_ends (0, "check again");

  g_autoptr (GBytes) bytes = shell_bytes ("demo");
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);
  g_assert_true (g_file_set_contents (path, data, (gssize) (n * 9 / 10), NULL));
  shell_tool_ends (1, "summary cut");
  shell_tool (&cut, 0, "recover cut rest");
  shell_assert_says (cut.out, "Lost, at least");
  shell_assert_says (cut.out, "missing at its end");
  shell_tool (&summary, 0, "summary rest");
  shell_assert_says (summary.out, "Tern Cove");

  shell_tool_ends (1, "recover cut rest");
  shell_write ("foreign", "This is no job.\n");
  shell_tool_ends (1, "recover foreign nothing");
  shell_tool_ends (2, "recover cut");
}

static void
remove_tree (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);

    if (g_remove (path) != 0)
      remove_tree (path);
  }
  g_remove (folder);
}

int
main (int argc, char **argv)
{
  g_autofree char *data = g_dir_make_tmp ("lastbent-data-XXXXXX", NULL);

  g_test_init (&argc, &argv, NULL);
  g_setenv ("XDG_DATA_HOME", data, TRUE);
  shell_set_up ();
  g_test_add_func ("/tool/copies/copies", test_copies);
  g_test_add_func ("/tool/copies/recover", test_recover);

  const int status = g_test_run ();
  shell_tear_down ();
  remove_tree (data);
  return status;
}
