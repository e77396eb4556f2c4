/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shell command: a table of commands, one file each. What is the same for all of them happens
 * here: the locale, --help, options, and how many arguments there are. */
#include "tool/command.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#define PROGRAM "lastbent-tool"

static const LbCommand *const commands[] = {
  &lb_command_demo,
  &lb_command_new,
  &lb_command_take_piles,
  &lb_command_take_cautions,
  &lb_command_take_dive_table,
  &lb_command_take_crane_chart,
  &lb_command_take_soil,
  &lb_command_take_delay_causes,
  &lb_command_piles,
  &lb_command_cut,
  &lb_command_burn,
  &lb_command_record,
  &lb_command_divers,
  &lb_command_findings,
  &lb_command_answer,
  &lb_command_totals,
  &lb_command_summary,
  &lb_command_draw,
  &lb_command_print,
  &lb_command_sign,
  &lb_command_packet,
  &lb_command_join,
  &lb_command_check,
  &lb_command_copies,
  &lb_command_recover,
};

static void
set_up_locale (void)
{
  const char *directory = g_getenv ("LASTBENT_LOCALE_DIR");

  setlocale (LC_ALL, "");
  /* Numbers in files and on pipes are the same everywhere. */
  setlocale (LC_NUMERIC, "C");
  bindtextdomain (GETTEXT_PACKAGE, directory != NULL ? directory : LB_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

static void
print_commands (void (*print) (const char *format, ...))
{
  print (_ ("Usage: %s COMMAND …\n\nCommands:\n"), PROGRAM);
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    print ("  %-17s %s\n", commands[i]->name, _ (commands[i]->summary));
  print ("\n");
  print (_ ("“%s COMMAND --help” says more. Exit status: 0 done, 1 refused, 2 the command line "
            "cannot be understood.\n"),
         PROGRAM);
}

static const LbCommand *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++) {
    if (g_str_equal (commands[i]->name, name))
      return commands[i];
  }

  return NULL;
}

static gboolean
all_are_text (int argc, char **argv)
{
  for (int i = 0; i < argc; i++) {
    if (!g_utf8_validate (argv[i], -1, NULL))
      return FALSE;
  }

  return TRUE;
}

static LbExit
run_command (const LbCommand *command, int argc, char **argv)
{
  g_autofree char *name = g_strconcat (PROGRAM, " ", command->name, NULL);
  g_autoptr (GOptionContext) context = g_option_context_new (_ (command->arguments));
  g_autoptr (GError) error = NULL;
  const char *more = command->more != NULL ? _ (command->more) : "";
  g_autofree char *summary = g_strconcat (_ (command->summary), *more != '\0' ? "\n\n" : "", more,
                                          NULL);

  g_set_prgname (name);
  g_option_context_set_summary (context, summary);
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  if (command->options != NULL)
    g_option_context_add_main_entries (context, command->options, GETTEXT_PACKAGE);
  if (!g_option_context_parse (context, &argc, &argv, &error))
    return lb_tool_misuse ("%s", error->message);

  int n_args = argc - 1;
  char **args = argv + 1;

  /* What follows "--" is no option; the mark itself stays in the line. */
  for (int i = 0; i < n_args; i++) {
    if (g_str_equal (args[i], "--")) {
      for (int j = i; j + 1 < n_args; j++)
        args[j] = args[j + 1];
      n_args--;
      break;
    }
  }
  if (n_args < command->least || (command->most >= 0 && n_args > command->most))
    return lb_tool_misuse (_ ("expected: %s"), _ (command->arguments));

  return command->run (n_args, args);
}

int
main (int argc, char **argv)
{
  set_up_locale ();
  g_set_prgname (PROGRAM);

  if (argc < 2) {
    print_commands (g_printerr);
    return LB_EXIT_USAGE;
  }
  if (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h") ||
      g_str_equal (argv[1], "help")) {
    print_commands (g_print);
    return LB_EXIT_DONE;
  }
  if (g_str_equal (argv[1], "--version")) {
    g_print ("%s %s\n", PROGRAM, LB_VERSION);
    return LB_EXIT_DONE;
  }
  if (!all_are_text (argc, argv))
    return lb_tool_misuse (_ ("an argument is not UTF-8 text"));

  const LbCommand *command = find_command (argv[1]);

  if (command == NULL)
    return lb_tool_misuse (_ ("there is no command “%s”"), argv[1]);

  return run_command (command, argc - 1, argv + 1);
}
