/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/backup.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean keep_now;

static const GOptionEntry options[] = {
  { "keep", 0, 0, G_OPTION_ARG_NONE, &keep_now,
    N_ ("Make one first, if anything was recorded since the last"), NULL },
  { NULL },
};

static LbExit
run (int n_args, char **args)
{
  g_autofree char *folder = lb_backup_folder ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  if (keep_now && !lb_backup_keep (folder, args[0], g_get_real_time (), NULL, &error))
    return lb_tool_refuse (error);

  g_autoptr (GPtrArray) backups = lb_backup_list (folder, args[0]);
  for (guint i = 0; i < backups->len; i++) {
    const LbBackup *backup = g_ptr_array_index (backups, i);
    g_autoptr (GDateTime) made = g_date_time_new_from_unix_utc (backup->made_us / G_USEC_PER_SEC);
    g_autofree char *moment = g_date_time_format_iso8601 (made);
    g_autofree char *shown = g_filename_display_name (backup->path);

    g_string_append_printf (text, "%s  %s\n", moment, shown);
  }
  if (backups->len == 0) {
    g_print (_ ("No copy of “%s” is kept.\n"), args[0]);
    return LB_EXIT_DONE;
  }
  return lb_tool_put (text->str);
}

const LbCommand lb_command_copies = {
  .name = "copies",
  .arguments = N_ ("FILE"),
  .summary = N_ ("List the copies that are kept of a job file"),
  .more = N_ (
    "The newest first: the moment in UTC and the path. The window makes one when it opens "
    "a job; the last ten are kept. FILE need not be whole, nor there."),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
