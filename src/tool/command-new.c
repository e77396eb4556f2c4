/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/command.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

static char *name_option, *place_option, *datum_option, *units_option;

static const GOptionEntry options[] = {
  { "name", 0, 0, G_OPTION_ARG_STRING, &name_option, N_ ("The job’s name"), N_ ("TEXT") },
  { "place", 0, 0, G_OPTION_ARG_STRING, &place_option, N_ ("Where it is"), N_ ("TEXT") },
  { "datum", 0, 0, G_OPTION_ARG_STRING, &datum_option, N_ ("What elevations count from"),
    N_ ("TEXT") },
  { "units", 0, 0, G_OPTION_ARG_STRING, &units_option, N_ ("Units people read and type"),
    "us|metric" },
  { NULL },
};

/* The file's name without its ending. */
static char *
name_of_file (const char *path)
{
  char *name = g_path_get_basename (path);

  if (g_str_has_suffix (name, LB_BOOK_SUFFIX))
    name[strlen (name) - strlen (LB_BOOK_SUFFIX)] = '\0';
  return name;
}

static gboolean
record_settings (LbBook *book, GError **error)
{
  const char *const settings[][2] = { { "place", place_option },
                                      { "datum", datum_option },
                                      { "units", units_option } };
  LbDraft drafts[G_N_ELEMENTS (settings)];
  gsize n_drafts = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (settings); i++) {
    if (settings[i][1] == NULL)
      continue;
    drafts[n_drafts] = LB_DRAFT_INIT (LB_ENTRY_SETTING);
    drafts[n_drafts].what = settings[i][0];
    drafts[n_drafts++].note = settings[i][1];
  }

  return n_drafts == 0 || lb_book_record (book, drafts, n_drafts, NULL, error);
}

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = name_option != NULL ? g_strdup (name_option) : name_of_file (args[0]);
  LbUnits units;

  if (!lb_tool_read_units (units_option, &units, &error))
    return lb_tool_misuse ("%s", error->message);

  g_autoptr (LbBook) book = lb_book_create (args[0], name, &error);

  if (book == NULL)
    return lb_tool_refuse (error);
  if (!record_settings (book, &error)) {
    g_clear_pointer (&book, lb_book_close);
    g_unlink (args[0]);
    return lb_tool_refuse (error);
  }

  g_print (_ ("The job “%s” is in “%s”.\n"), name, args[0]);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_new = {
  .name = "new",
  .arguments = N_ ("FILE"),
  .summary = N_ ("Make an empty job"),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
