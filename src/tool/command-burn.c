/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job's burning rate, by bar size and visibility, and every sample that it was learned from:
 * those set aside, odd ones and those of shifts with a gear fault stand in the open. */
#include "book/burn-history.h"
#include "draw/burn-words.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "exchange/csv-text.h"
#include "tool/json-text.h"

#include <glib/gi18n-lib.h>

static gboolean as_json, as_csv;

static const GOptionEntry options[] = {
  { "csv", 0, 0, G_OPTION_ARG_NONE, &as_csv, N_ ("One row a sample, the last shift last"), NULL },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("For programs: SI values, units in the names"),
    NULL },
  { NULL },
};

static const LbBurnSample *
sample_at (const LbBurnHistory *history, guint i)
{
  return &g_array_index (history->samples, LbBurnSample, i);
}

static double
rate_of (const LbBurnSample *sample)
{
  return sample->trigger_s / sample->steel_m2;
}

/* What was seen of one size in one visibility. */
typedef struct
{
  guint n_bars, n_samples;
} Seen;

typedef struct
{
  const LbToolJob *job;
  const LbBurnHistory *history;
  const LbBurnModel *model;
} Burning;

/* Calls @each for every size and visibility that something was learned of. */
static void
for_rates (const Burning *burning,
           void (*each) (const Burning *burning,
                         const LbBar *bar,
                         LbVisibility visibility,
                         const Seen *seen,
                         gpointer data),
           gpointer data)
{
  gsize n_bars;
  const LbBar *bars = lb_bar_table (&n_bars);

  for (gsize size = 0; size < n_bars; size++) {
    for (int i = 0; i < LB_N_VISIBILITIES; i++) {
      Seen seen;

      lb_burn_history_count (burning->history, &bars[size], (LbVisibility) i, &seen.n_bars,
                             &seen.n_samples);
      if (seen.n_samples > 0)
        each (burning, &bars[size], (LbVisibility) i, &seen, data);
    }
  }
}

/* --- JSON --------------------------------------------------------------------------------- */

static void
add_flag (JsonBuilder *builder, const char *name, gboolean is_so)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_boolean_value (builder, is_so);
}

static void
add_rate (const Burning *burning,
          const LbBar *bar,
          LbVisibility visibility,
          const Seen *seen,
          gpointer data)
{
  JsonBuilder *builder = data;
  const LbRange rate = lb_burn_model_rate (burning->model, bar, visibility);

  json_builder_begin_object (builder);
  lb_json_add_text (builder, "bar", bar->name);
  lb_json_add_text (builder, "visibility", lb_visibility_key (visibility));
  lb_json_add_range (builder, "rate", LB_QUANTITY_BURN_RATE, &rate);
  lb_json_add_member (builder, g_strdup ("bars_count"), seen->n_bars);
  lb_json_add_member (builder, g_strdup ("samples_count"), seen->n_samples);
  json_builder_end_object (builder);
}

static void
add_where (JsonBuilder *builder, const LbLedger *ledger, int shift)
{
  const LbShift *of = lb_ledger_shift (ledger, (guint) shift);
  g_autofree char *day = lb_day_iso (of->day);

  lb_json_add_text (builder, "day", day);
  lb_json_add_text (builder, "watch", of->watch);
}

static void
add_sample (JsonBuilder *builder, const Burning *burning, const LbBurnSample *sample)
{
  json_builder_begin_object (builder);
  add_where (builder, burning->job->ledger, sample->shift);
  lb_json_add_text (builder, "pile", burning->job->fold->piles[sample->pile].mark);
  lb_json_add_text (builder, "bar", sample->bar != NULL ? sample->bar->name : NULL);
  lb_json_add_member (builder, g_strdup ("bars_count"), sample->n_bars);
  lb_json_add_member (builder, g_strdup ("steel_m2"), sample->steel_m2);
  lb_json_add_member (builder, g_strdup ("trigger_s"), sample->trigger_s);
  lb_json_add_member (builder, g_strdup ("rate_s_per_m2"), rate_of (sample));
  lb_json_add_text (builder, "visibility", lb_visibility_key (sample->visibility));
  add_flag (builder, "is_used", lb_burn_sample_is_used (sample));
  add_flag (builder, "has_fault", sample->has_fault);
  add_flag (builder, "is_outlier", lb_burn_model_is_outlier (burning->model, sample));
  add_flag (builder, "is_set_aside", sample->is_set_aside);
  lb_json_add_text (builder, "reason", sample->is_set_aside ? sample->reason : NULL);
  json_builder_end_object (builder);
}

static void
add_shift (JsonBuilder *builder, const Burning *burning, const LbBurnShift *shift)
{
  json_builder_begin_object (builder);
  add_where (builder, burning->job->ledger, shift->shift);
  lb_json_add_member (builder, g_strdup ("bars_count"), shift->n_bars);
  lb_json_add_member (builder, g_strdup ("trigger_s"), shift->trigger_s);
  lb_json_add_member (builder, g_strdup ("at_piles_s"), shift->wall_s);
  lb_json_add_member (builder, g_strdup ("rods_count"), shift->rods);
  lb_json_add_member (builder, g_strdup ("oxygen_m3"), shift->oxygen_m3);
  add_flag (builder, "has_fault", shift->has_fault);
  add_flag (builder, "is_set_aside", shift->is_set_aside);
  lb_json_add_text (builder, "reason", shift->is_set_aside ? shift->reason : NULL);
  json_builder_end_object (builder);
}

static LbExit
put_json (const Burning *burning)
{
  const LbRange rate = lb_burn_model_rate (burning->model, NULL, LB_VISIBILITY_UNKNOWN);
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  add_flag (builder, "is_default", burning->model->n_samples == 0);
  lb_json_add_range (builder, "rate", LB_QUANTITY_BURN_RATE, &rate);
  lb_json_add_range (builder, "stated", LB_QUANTITY_BURN_RATE, &burning->model->stated);
  lb_json_add_member (builder, g_strdup ("bars_count"), burning->model->n_bars);
  lb_json_add_member (builder, g_strdup ("untimed_bars_count"), burning->history->n_untimed);
  json_builder_set_member_name (builder, "rates");
  json_builder_begin_array (builder);
  for_rates (burning, add_rate, builder);
  json_builder_end_array (builder);
  json_builder_set_member_name (builder, "samples");
  json_builder_begin_array (builder);
  for (guint i = 0; i < burning->history->samples->len; i++)
    add_sample (builder, burning, sample_at (burning->history, i));
  json_builder_end_array (builder);
  json_builder_set_member_name (builder, "shifts");
  json_builder_begin_array (builder);
  for (guint i = 0; i < burning->history->shifts->len; i++)
    add_shift (builder, burning, &g_array_index (burning->history->shifts, LbBurnShift, i));
  json_builder_end_array (builder);
  json_builder_end_object (builder);
  return lb_json_put (builder);
}

/* --- CSV ---------------------------------------------------------------------------------- */

static void
append_csv_row (GString *csv, const Burning *burning, const LbBurnSample *sample)
{
  const LbShift *shift = lb_ledger_shift (burning->job->ledger, (guint) sample->shift);
  g_autofree char *day = lb_day_iso (shift->day);

  lb_csv_add_text (csv, day);
  lb_csv_add_text (csv, shift->watch);
  lb_csv_add_text (csv, burning->job->fold->piles[sample->pile].mark);
  lb_csv_add_text (csv, sample->bar != NULL ? sample->bar->name : "");
  lb_csv_add_number (csv, sample->n_bars);
  lb_csv_add_number (csv, sample->steel_m2);
  lb_csv_add_number (csv, sample->trigger_s);
  lb_csv_add_number (csv, rate_of (sample));
  lb_csv_add_text (csv, lb_visibility_key (sample->visibility));
  lb_csv_add_number (csv, sample->has_fault);
  lb_csv_add_number (csv, lb_burn_model_is_outlier (burning->model, sample));
  lb_csv_add_number (csv, sample->is_set_aside);
  lb_csv_add_text (csv, sample->reason);
  lb_csv_end_row (csv);
}

static LbExit
put_csv (const Burning *burning)
{
  static const char *const columns[] = { "day",          "watch",     "pile",       "bar",
                                         "bars_count",   "steel_m2",  "trigger_s",  "rate_s_per_m2",
                                         "visibility",   "has_fault", "is_outlier", "is_set_aside",
                                         "set_aside_for" };
  g_autoptr (GString) csv = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    lb_csv_add_text (csv, columns[i]);
  lb_csv_end_row (csv);
  for (guint i = 0; i < burning->history->samples->len; i++)
    append_csv_row (csv, burning, sample_at (burning->history, i));
  return lb_tool_put (csv->str);
}

/* --- For people --------------------------------------------------------------------------- */

typedef struct
{
  GString *text;
  LbVoice voice;
} Page;

static void
append_rate (const Burning *burning,
             const LbBar *bar,
             LbVisibility visibility,
             const Seen *seen,
             gpointer data)
{
  const Page *page = data;
  const LbRange range = lb_burn_model_rate (burning->model, bar, visibility);
  g_autofree char *rate = lb_burn_rate_text (&page->voice, &range);
  g_autofree char *bars = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u bar", "%u bars", seen->n_bars), seen->n_bars);

  g_string_append_printf (page->text, "%s, %s: %s · %s\n", bar->name,
                          g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (visibility)), rate,
                          bars);
}

static void
append_sample (Page *page, const Burning *burning, const LbBurnSample *sample)
{
  const LbShift *shift = lb_ledger_shift (burning->job->ledger, (guint) sample->shift);
  g_autofree char *day = lb_day_iso (shift->day);
  g_autofree char *time = lb_voice_quantity (&page->voice, LB_QUANTITY_SHORT_TIME,
                                             sample->trigger_s);
  g_autofree char *rate = lb_voice_quantity (&page->voice, LB_QUANTITY_BURN_RATE, rate_of (sample));
  g_autofree char *remark = lb_burn_sample_remark (burning->model, sample);

  g_string_append_printf (page->text, "%s %s  %s: %u × %s, %s, %s, %s%s%s\n", day, shift->watch,
                          burning->job->fold->piles[sample->pile].mark, sample->n_bars,
                          sample->bar != NULL ? sample->bar->name : "?", time, rate,
                          g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (sample->visibility)),
                          *remark != '\0' ? " · " : "", remark);
}

/* Shifts whose rods, oxygen and strikes count no more. */
static void
append_shift_set_aside (Page *page, const Burning *burning, const LbBurnShift *of)
{
  const LbShift *shift = lb_ledger_shift (burning->job->ledger, (guint) of->shift);
  g_autofree char *day = lb_day_iso (shift->day);

  g_string_append_printf (page->text, _ ("%s %s, with its rods and oxygen: set aside: %s\n"), day,
                          shift->watch, of->reason);
}

static LbExit
put_text (const Burning *burning)
{
  const LbRange range = lb_burn_model_rate (burning->model, NULL, LB_VISIBILITY_UNKNOWN);
  g_autoptr (GString) text = g_string_new (NULL);
  Page page = { .text = text, .voice = lb_tool_voice (burning->job) };
  g_autofree char *rate = lb_burn_rate_text (&page.voice, &range);
  LbBurnBasis basis;

  lb_burn_model_basis (burning->model, NULL, LB_VISIBILITY_UNKNOWN, &basis);

  g_autofree char *rests_on = lb_burn_basis_text (&basis);

  /* Translators: trigger time by steel area with its P10 and P90, and what that rests on. */
  g_string_append_printf (text, _ ("Trigger time: %s · %s\n"), rate, rests_on);
  for_rates (burning, append_rate, &page);
  if (burning->history->n_untimed > 0)
    g_string_append_printf (text, _ ("Bars burned without their trigger time: %u\n"),
                            burning->history->n_untimed);
  if (burning->history->samples->len > 0)
    g_string_append_printf (text, "\n%s\n", _ ("Samples"));
  for (guint i = 0; i < burning->history->samples->len; i++)
    append_sample (&page, burning, sample_at (burning->history, i));
  for (guint i = 0; i < burning->history->shifts->len; i++) {
    const LbBurnShift *shift = &g_array_index (burning->history->shifts, LbBurnShift, i);

    if (shift->is_set_aside)
      append_shift_set_aside (&page, burning, shift);
  }
  return lb_tool_put (text->str);
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;

  if (as_csv && as_json)
    return lb_tool_misuse (_ ("--csv and --json exclude each other"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  g_autoptr (LbBurnHistory) history = lb_burn_history_new (job.ledger, job.fold);
  const Burning burning = { .job = &job,
                            .history = history,
                            .model = lb_fold_basis (job.fold)->burn };

  return as_json ? put_json (&burning) : as_csv ? put_csv (&burning) : put_text (&burning);
}

const LbCommand lb_command_burn = {
  .name = "burn",
  .arguments = N_ ("FILE"),
  .summary = N_ ("The burning rate by bar size and visibility, and the samples it is learned from"),
  .more = N_ ("Trigger time by area of steel, with its P10 and P90. “record FILE set-aside” sets a "
              "sample aside, with a reason."),
  .options = options,
  .least = 1,
  .most = 1,
  .run = run,
};
