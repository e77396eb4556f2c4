/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Joining a packet, or another copy of the job file: what it brings is said first, and with --look
 * nothing else is done. */
#include "book/join-preview.h"
#include "book/packet.h"
#include "draw/finding-words.h"
#include "draw/join-words.h"
#include "draw/plan-words.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>

static gboolean only_look, as_json;

static const GOptionEntry options[] = {
  { "look", 0, 0, G_OPTION_ARG_NONE, &only_look, N_ ("Say what would come; change nothing"), NULL },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

static char *
moment_text (gint64 us)
{
  g_autoptr (GDateTime) moment = g_date_time_new_from_unix_utc (us / G_USEC_PER_SEC);

  return moment != NULL && us != 0 ? g_date_time_format (moment, "%Y-%m-%dT%H:%M:%SZ") : NULL;
}

static void
add_origin (GString *text, const LbPacket *packet)
{
  g_autofree char *moment = moment_text (packet->made_us);

  if (!packet->is_packet)
    g_string_append (text, _ ("Another copy of this job file.\n"));
  else if (*packet->who != '\0')
    /* Translators: who sent a packet, and when. */
    g_string_append_printf (text, _ ("Sent by %s, %s.\n"), packet->who, moment);
  else
    g_string_append_printf (text, _ ("Sent %s.\n"), moment);
}

static LbExit
put_text (const LbToolJob *job, const LbPacket *packet, const LbJoinPreview *preview, gint64 now_us)
{
  const LbVoice voice = lb_tool_voice (job);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *news = lb_join_news_text (preview);
  g_autofree char *ahead = lb_join_ahead_text (preview, now_us);

  add_origin (text, packet);
  g_string_append_printf (text, "%s\n", news);
  for (guint i = 0; i < preview->joined->shifts->len; i++) {
    if (preview->n_by_shift[i] > 0) {
      g_autofree char *shift = lb_join_shift_text (preview, i);
      g_string_append_printf (text, "  %s\n", shift);
    }
  }
  if (ahead != NULL)
    g_string_append_printf (text, "%s\n", ahead);
  for (guint i = 0; i < preview->findings->len; i++) {
    const LbFinding *finding = &g_array_index (preview->findings, LbFinding, i);
    g_autofree char *wrong = lb_finding_text (&voice, preview->joined, preview->fold, finding);

    g_string_append_printf (text, "%s %s\n", wrong, lb_finding_advice (finding->kind));
  }
  if (!only_look && !lb_join_preview_is_empty (preview))
    g_string_append (text, _ ("Joined.\n"));
  return lb_tool_put (text->str);
}

static void
add_shifts (JsonBuilder *builder, const LbJoinPreview *preview)
{
  json_builder_set_member_name (builder, "shifts");
  json_builder_begin_array (builder);
  for (guint i = 0; i < preview->joined->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (preview->joined, i);
    g_autofree char *day = lb_day_iso (shift->day);

    if (preview->n_by_shift[i] == 0 && !preview->is_new_shift[i])
      continue;
    json_builder_begin_object (builder);
    lb_json_add_text (builder, "day", day);
    lb_json_add_text (builder, "watch", shift->watch);
    lb_json_add_text (builder, "id", shift->id);
    json_builder_set_member_name (builder, "is_new");
    json_builder_add_boolean_value (builder, preview->is_new_shift[i]);
    lb_json_add_count (builder, "entries", preview->n_by_shift[i]);
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
}

static void
add_findings (JsonBuilder *builder, const LbVoice *voice, const LbJoinPreview *preview)
{
  json_builder_set_member_name (builder, "findings");
  json_builder_begin_array (builder);
  for (guint i = 0; i < preview->findings->len; i++) {
    const LbFinding *finding = &g_array_index (preview->findings, LbFinding, i);
    g_autofree char *wrong = lb_finding_text (voice, preview->joined, preview->fold, finding);

    json_builder_begin_object (builder);
    lb_json_add_text (builder, "key", finding->key);
    lb_json_add_text (builder, "kind", lb_finding_kind_name (finding->kind));
    lb_json_add_text (builder, "text", wrong);
    lb_json_add_text (builder, "advice", lb_finding_advice (finding->kind));
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
}

static LbExit
put_json (const LbToolJob *job, const LbPacket *packet, const LbJoinPreview *preview, gint64 now_us)
{
  const LbVoice voice = lb_tool_voice (job);
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autofree char *sent = moment_text (packet->made_us);
  g_autofree char *ahead = lb_join_ahead_text (preview, now_us);

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "job", preview->joined->job_id);
  lb_json_add_text (builder, "sent_by", packet->is_packet ? packet->who : NULL);
  lb_json_add_text (builder, "sent", sent);
  lb_json_add_count (builder, "new_piles", preview->n_piles);
  lb_json_add_count (builder, "new_entries", preview->n_work);
  lb_json_add_count (builder, "new_facts", preview->n_facts);
  lb_json_add_count (builder, "known_entries", preview->n_known);
  lb_json_add_text (builder, "clock", ahead);
  add_shifts (builder, preview);
  add_findings (builder, &voice, preview);
  json_builder_set_member_name (builder, "is_joined");
  json_builder_add_boolean_value (builder, !only_look);
  json_builder_end_object (builder);
  return lb_json_put (builder);
}

static LbExit
run (int n_args, char **args)
{
  const gint64 now_us = g_get_real_time ();
  g_auto (LbToolJob) job = { NULL };
  g_autoptr (GError) error = NULL;

  if (!lb_tool_job_open (&job, args[0], only_look ? LB_BOOK_READ : LB_BOOK_WRITE, &error))
    return lb_tool_refuse (error);

  g_autoptr (LbPacket) packet = lb_packet_open (args[1], NULL, &error);
  LbLedger *into = packet != NULL ? lb_book_read (job.book, NULL, &error) : NULL;
  g_autoptr (LbJoinPreview) preview = into != NULL
                                        ? lb_join_preview_new (into, packet->ledger, &error)
                                        : NULL;
  if (preview == NULL ||
      (!only_look && !lb_book_join (job.book, job.ledger, packet, NULL, NULL, NULL, NULL, &error)))
    return lb_tool_refuse (error);
  return as_json ? put_json (&job, packet, preview, now_us)
                 : put_text (&job, packet, preview, now_us);
}

const LbCommand lb_command_join = {
  .name = "join",
  .arguments = N_ ("FILE PACKET"),
  .summary = N_ ("Join a packet, or another copy of the job file"),
  .more = N_ (
    "Says who sent it and when, what is new, and what the two sides say differently. What "
    "is known already is passed over, so joining twice does no harm; what was changed by "
    "hand, or belongs to another job, is refused."),
  .options = options,
  .least = 2,
  .most = 2,
  .run = run,
};
