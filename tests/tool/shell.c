/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell.h"

#include <glib/gstdio.h>
#include <string.h>

static char *folder;

void
said_clear (Said *said)
{
  g_clear_pointer (&said->out, g_free);
  g_clear_pointer (&said->err, g_free);
}

void
shell_set_up (void)
{
  g_autoptr (GError) error = NULL;

  folder = g_dir_make_tmp ("lastbent-tool-XXXXXX", &error);
  g_assert_no_error (error);
}

void
shell_tear_down (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);

    g_assert_cmpint (g_unlink (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_clear_pointer (&folder, g_free);
}

char *
shell_path (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

void
shell_write (const char *name, const char *text)
{
  g_autofree char *path = shell_path (name);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, text, -1, &error);
  g_assert_no_error (error);
}

GBytes *
shell_bytes (const char *name)
{
  g_autofree char *path = shell_path (name);
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (text, length);
}

static void
run_arguments (Said *said, const char *const *arguments)
{
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (
    G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE);
  g_autoptr (GError) error = NULL;

  said_clear (said);
  g_subprocess_launcher_set_cwd (launcher, folder);
  g_autoptr (GSubprocess) process = g_subprocess_launcher_spawnv (launcher, arguments, &error);

  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (process, NULL, NULL, &said->out, &said->err, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_if_exited (process));
  said->status = g_subprocess_get_exit_status (process);
}

void
shell_run (Said *said, const char *program, ...)
{
  g_autoptr (GPtrArray) arguments = g_ptr_array_new ();
  va_list more;

  va_start (more, program);
  for (const char *argument = program; argument != NULL; argument = va_arg (more, const char *))
    g_ptr_array_add (arguments, (gpointer) argument);
  va_end (more);
  g_ptr_array_add (arguments, NULL);
  run_arguments (said, (const char *const *) arguments->pdata);
}

void
shell_tool (Said *said, int status, const char *line)
{
  g_autofree char *program = g_build_filename (g_getenv ("LB_BUILD_DIR"), "src", "tool",
                                               "lastbent-tool", NULL);
  g_autofree char *whole = g_strconcat (program, " ", line, NULL);
  g_auto (GStrv) arguments = NULL;
  g_autoptr (GError) error = NULL;

  g_shell_parse_argv (whole, NULL, &arguments, &error);
  g_assert_no_error (error);
  run_arguments (said, (const char *const *) arguments);
  if (said->status != status)
    g_error ("“%s” ended with %d and not %d: %s", line, said->status, status, said->err);
  /* A refusal says why, on stderr; what was done is silent there. */
  g_assert_true ((*said->err == '\0') == (status == 0));
}

void
shell_tool_ends (int status, const char *line)
{
  g_auto (Said) said = { 0 };

  shell_tool (&said, status, line);
}

void
shell_make_demo (void)
{
  g_autofree char *path = shell_path ("demo");

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    shell_tool_ends (0, "demo demo");
}

void
shell_assert_says (const char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” is not in: %s", part, text);
}

JsonNode *
shell_parse_json (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *root = json_from_string (text, &error);

  g_assert_no_error (error);
  return root;
}

LbTextTable *
shell_parse_csv (const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (GError) error = NULL;
  LbTextTable *table = lb_text_table_parse (bytes, NULL, &error);

  g_assert_no_error (error);
  for (gsize row = 0; row < lb_text_table_get_shape (table).n_rows; row++)
    g_assert_cmpuint (lb_text_table_row_cells (table, row), ==,
                      lb_text_table_get_shape (table).n_columns);
  return table;
}
