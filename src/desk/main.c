/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/application.h"
#include "desk/shell/frame-memory.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

int
main (int argc, char *argv[])
{
  /* Uninstalled, the translations lie in the build directory. */
  const char *locale_dir = g_getenv ("LASTBENT_LOCALE_DIR");
  g_autoptr (LbApplication) application = NULL;

  lb_frame_memory_keep ();

  /* Once, here: the toolkit would do it again while a worker is reading the job. */
  setlocale (LC_ALL, "");
  gtk_disable_setlocale ();
  bindtextdomain (GETTEXT_PACKAGE, locale_dir != NULL ? locale_dir : LB_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  application = lb_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
