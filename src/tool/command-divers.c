/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each diver has left, for the dive station: the divers of a day, or the one that is named,
 * each with one line. */
#include "book/clock-text.h"
#include "book/dive-log.h"
#include "draw/dive-words.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *day_option, *watch_option, *depth_option, *at_option;
static gboolean as_json;

static const GOptionEntry options[] = {
  { "day", 0, 0, G_OPTION_ARG_STRING, &day_option, N_ ("The shift’s day; today when not given"),
    N_ ("DATE") },
  { "watch", 0, 0, G_OPTION_ARG_STRING, &watch_option, N_ ("The shift’s watch; day when not given"),
    "day|night" },
  { "depth", 0, 0, G_OPTION_ARG_STRING, &depth_option,
    N_ ("Pneumo depth of the dive to come; that of each diver’s last dive when not given"),
    N_ ("LENGTH") },
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_option,
    N_ ("When the dive to come leaves the surface, as 13:40; now when not given"), N_ ("TIME") },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

typedef struct
{
  guint32 day;
  gint64 at_us;
  double depth_m; /* NAN for that of the last dive */
} Question;

static gboolean
read_question (const LbToolJob *job, Question *out, GError **error)
{
  LbShift shift = { .watch = watch_option != NULL ? watch_option : "day" };

  *out =
    (Question){ .day = lb_clock_today (), .at_us = g_get_real_time (), .depth_m = (double) NAN };
  if (day_option != NULL && !lb_tool_read_day (day_option, &out->day, error))
    return FALSE;
  if (!g_str_equal (shift.watch, "day") && !g_str_equal (shift.watch, "night")) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("A watch is “day” or “night”, not “%.40s”"), shift.watch);
    return FALSE;
  }
  shift.day = out->day;
  if (at_option != NULL && !lb_clock_from_text (&shift, at_option, &out->at_us, error))
    return FALSE;
  return depth_option == NULL || lb_quantity_from_text (LB_QUANTITY_LENGTH, job->fold->units,
                                                        depth_option, &out->depth_m, error);
}

static gboolean
has_diver (const GPtrArray *divers, const char *diver)
{
  for (guint i = 0; i < divers->len; i++) {
    if (lb_is_same_diver (g_ptr_array_index (divers, i), diver))
      return TRUE;
  }
  return FALSE;
}

/* Who dived on the day, in the order of the record; borrowed from the ledger. */
static GPtrArray *
find_divers (const LbToolJob *job, guint32 day)
{
  GPtrArray *divers = g_ptr_array_new ();

  for (gsize i = 0; i < job->fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (job->ledger, (guint) i);

    if (entry->kind == LB_ENTRY_DIVE && job->fold->is_alive[i] && entry->shift >= 0 &&
        lb_ledger_shift (job->ledger, (guint) entry->shift)->day == day &&
        !has_diver (divers, entry->what))
      g_ptr_array_add (divers, (gpointer) entry->what);
  }
  return divers;
}

/* What one diver has left, and at which depth. */
static LbDiveLeft
ask (const LbDiveLog *log, const Question *question, const char *diver, double *out_depth_m)
{
  const LbEntry *last = lb_dive_log_last (log, diver);

  *out_depth_m = question->depth_m;
  if (isnan (question->depth_m) && last != NULL)
    *out_depth_m = last->amount;
  return lb_dive_log_left (log, diver, *out_depth_m, question->at_us);
}

static LbExit
put_text (const LbToolJob *job,
          const LbDiveLog *log,
          const Question *question,
          const GPtrArray *divers)
{
  const LbVoice voice = lb_tool_voice (job);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < divers->len; i++) {
    const char *diver = g_ptr_array_index (divers, i);
    double depth_m;
    const LbDiveLeft left = ask (log, question, diver, &depth_m);
    g_autofree char *said = lb_dive_left_text (&voice, &left, depth_m, question->at_us);

    g_string_append_printf (text, "%s: %s\n", diver, said);
  }
  if (divers->len == 0)
    g_string_append (text, _ ("Nobody dived on that day.\n"));
  return lb_tool_put (text->str);
}

static void
add_diver (JsonBuilder *builder, const LbDiveLog *log, const Question *question, const char *diver)
{
  static const char *const states[] = {
    [LB_DIVE_LEFT_KNOWN] = "known",
    [LB_DIVE_LEFT_NOT_WRITTEN] = "not-written",
    [LB_DIVE_LEFT_OUT_OF_ORDER] = "out-of-order",
    [LB_DIVE_LEFT_PAST_LIMIT] = "past-limit",
    [LB_DIVE_LEFT_OUTSIDE] = "outside-tables",
    [LB_DIVE_LEFT_OWN_TABLE] = "own-table",
  };
  double depth_m;
  const LbDiveLeft left = ask (log, question, diver, &depth_m);
  const gboolean is_known = left.state == LB_DIVE_LEFT_KNOWN;
  const char group[] = { left.group, '\0' };

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "diver", diver);
  lb_json_add_text (builder, "state", states[left.state]);
  lb_json_add_text (builder, "group", is_known && left.group != 0 ? group : NULL);
  lb_json_add_member (builder, g_strdup ("depth_m"), depth_m);
  lb_json_add_member (builder, g_strdup ("limit_s"), is_known ? left.limit_s : (double) NAN);
  lb_json_add_member (builder, g_strdup ("residual_s"), is_known ? left.residual_s : (double) NAN);
  lb_json_add_member (builder, g_strdup ("spent_s"), is_known ? left.spent_s : (double) NAN);
  lb_json_add_member (builder, g_strdup ("open_s"), is_known ? left.open_s : (double) NAN);
  json_builder_set_member_name (builder, "is_unlimited");
  json_builder_add_boolean_value (builder, is_known && isinf (left.open_s) != 0);
  json_builder_end_object (builder);
}

static LbExit
put_json (const LbDiveLog *log, const Question *question, const GPtrArray *divers)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (guint i = 0; i < divers->len; i++)
    add_diver (builder, log, question, g_ptr_array_index (divers, i));
  json_builder_end_array (builder);
  return lb_json_put (builder);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  Question question;

  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);
  if (!read_question (&job, &question, &error))
    return lb_tool_misuse ("%s", error->message);

  g_autoptr (LbDiveLog) log = lb_dive_log_new (job.ledger, job.fold);
  g_autoptr (GPtrArray) divers = find_divers (&job, question.day);

  return as_json ? put_json (log, &question, divers) : put_text (&job, log, &question, divers);
}

const LbCommand lb_command_divers = {
  .name = "divers",
  .arguments = N_ ("FILE"),
  .summary = N_ ("What bottom time without stops each diver of a day has left"),
  .more = N_ ("Bottom times are compared with no-stop limits, less what the diver’s earlier dives "
              "count; a decompression schedule is never made. The diving supervisor stands above "
              "every figure."),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
