/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/packet.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static char *shift_option, *from_option, *to_option, *who_option;
static gboolean all_option, as_json;

static const GOptionEntry options[] = {
  { "shift", 0, 0, G_OPTION_ARG_STRING, &shift_option,
    N_ ("The shifts of this day, or one of them: 2026-07-14, 2026-07-14/night"),
    N_ ("DATE[/day|/night]") },
  { "from", 0, 0, G_OPTION_ARG_STRING, &from_option, N_ ("The shifts from this day on"),
    N_ ("DATE") },
  { "to", 0, 0, G_OPTION_ARG_STRING, &to_option, N_ ("The shifts up to this day"), N_ ("DATE") },
  { "all", 0, 0, G_OPTION_ARG_NONE, &all_option, N_ ("All shifts"), NULL },
  { "who", 0, 0, G_OPTION_ARG_STRING, &who_option, N_ ("Who sends it: a role or initials"),
    N_ ("TEXT") },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

static gboolean
read_shift (const char *text, LbPacketSpan *span, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, "/", 2);
  static const char *const watches[] = { "day", "night", NULL };

  if (!lb_tool_read_day (parts[0] != NULL ? parts[0] : text, &span->first_day, error))
    return FALSE;
  span->last_day = span->first_day;
  if (parts[1] == NULL)
    return TRUE;
  for (int i = 0; watches[i] != NULL; i++) {
    if (g_str_equal (parts[1], watches[i]))
      span->watch = watches[i];
  }
  if (span->watch == NULL)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("A watch is “day” or “night”, not “%.40s”"), parts[1]);
  return span->watch != NULL;
}

/* One of --shift, --from and --to, and --all. */
static gboolean
read_span (LbPacketSpan *span, GError **error)
{
  const gboolean is_span = from_option != NULL || to_option != NULL;
  const int n_ways = (shift_option != NULL) + is_span + (all_option != FALSE);

  *span = LB_PACKET_SPAN_ALL;
  if (n_ways != 1) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("Say what to send: --shift, or --from and --to, or --all"));
    return FALSE;
  }
  if (shift_option != NULL)
    return read_shift (shift_option, span, error);
  return (from_option == NULL || lb_tool_read_day (from_option, &span->first_day, error)) &&
         (to_option == NULL || lb_tool_read_day (to_option, &span->last_day, error));
}

static LbExit
put_json (const char *path, const LbJoined *sent)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "packet", path);
  lb_json_add_count (builder, "shifts", sent->n_shifts);
  lb_json_add_count (builder, "entries", sent->n_entries);
  lb_json_add_count (builder, "piles", sent->n_piles);
  json_builder_end_object (builder);
  return lb_json_put (builder);
}

static LbExit
run (int n_args, char **args)
{
  g_autoptr (GError) error = NULL;
  LbPacketSpan span;
  LbJoined sent = { 0 };

  if (!read_span (&span, &error))
    return lb_tool_misuse ("%s", error->message);

  g_autoptr (LbBook) book = lb_book_open (args[0], LB_BOOK_READ, &error);
  if (book == NULL || !lb_packet_write (book, &span, who_option != NULL ? who_option : "", args[1],
                                        &sent, NULL, NULL, NULL, &error))
    return lb_tool_refuse (error);
  if (as_json)
    return put_json (args[1], &sent);

  g_autofree char *name = g_filename_display_basename (args[1]);
  g_print (g_dngettext (GETTEXT_PACKAGE, "%u shift is in “%s”.\n", "%u shifts are in “%s”.\n",
                        sent.n_shifts),
           sent.n_shifts, name);
  return LB_EXIT_DONE;
}

const LbCommand lb_command_packet = {
  .name = "packet",
  .arguments = N_ ("FILE OUT.lastpack"),
  .summary = N_ ("Put shifts into a packet for another crew’s job file"),
  .more = N_ ("With the shifts go all piles, facts and settings, and whatever the shifts refer to. "
              "OUT.lastpack must not exist."),
  .options = options,
  .least = 2,
  .most = 2,
  .run = run,
};
