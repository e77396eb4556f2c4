/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two tables over what the ledger holds: the samples, the last shift first, and the rates. The
 * buttons below act on the picked sample; they say what they would do.
 *
 * Invariant: row i of the samples is samples[n − 1 − i] of the history. */
#include "desk/basis/burn-window.h"

#include "book/burn-history.h"
#include "desk/basis/set-aside-dialog.h"
#include "desk/shell/plain-table.h"
#include "draw/burn-words.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

struct _LbBurnWindow
{
  AdwWindow parent_instance;

  GtkLabel *rate_label;
  GtkColumnView *samples_view;
  GtkColumnView *rates_view;
  GtkWidget *aside_button, *in_button, *shift_button;

  /* Owned */
  LbJob *job;
  GSignalGroup *job_signals;
  GSignalGroup *pick_signals; /* of the samples' model, which goes with the columns */
  LbBurnHistory *history;     /* of the job as it is now */
  GArray *rates;              /* RateRow */
};

/* A size and visibility that something was learned of. */
typedef struct
{
  const LbBar *bar;
  LbVisibility visibility;
  guint n_bars, n_samples;
} RateRow;

G_DEFINE_FINAL_TYPE (LbBurnWindow, lb_burn_window, ADW_TYPE_WINDOW)

static const LbBurnModel *
model_of (LbBurnWindow *self)
{
  return lb_fold_basis (lb_job_get_fold (self->job))->burn;
}

static const LbBurnSample *
sample_of_row (LbBurnWindow *self, guint row)
{
  return &g_array_index (self->history->samples, LbBurnSample,
                         self->history->samples->len - 1 - row);
}

/* NULL when none is picked. */
static const LbBurnSample *
picked (LbBurnWindow *self)
{
  const guint row = lb_plain_table_get_picked (self->samples_view);

  return self->history != NULL && row < self->history->samples->len ? sample_of_row (self, row)
                                                                    : NULL;
}

static gboolean
is_shift_set_aside (LbBurnWindow *self, int shift)
{
  for (guint i = 0; i < self->history->shifts->len; i++) {
    const LbBurnShift *one = &g_array_index (self->history->shifts, LbBurnShift, i);

    if (one->shift == shift)
      return one->is_set_aside;
  }
  return FALSE;
}

/* --- Tables ------------------------------------------------------------------------------- */

typedef enum {
  SAMPLE_DAY,
  SAMPLE_PILE,
  SAMPLE_BARS,
  SAMPLE_TRIGGER,
  SAMPLE_RATE,
  SAMPLE_VISIBILITY,
  SAMPLE_REMARK,
} SampleColumn;

#define N_SAMPLE_COLUMNS (SAMPLE_REMARK + 1)

static char *
day_text (LbBurnWindow *self, int shift)
{
  const LbShift *of = lb_ledger_shift (lb_job_get_ledger (self->job), (guint) shift);
  char *day = lb_day_text (of->day);

  if (!g_str_equal (of->watch, "night"))
    return day;
  /* Translators: a day, of a shift that worked the night after it. */
  char *night = g_strdup_printf (_ ("%s, night"), day);

  g_free (day);
  return night;
}

static char *
sample_cell (guint row, guint column, gpointer data)
{
  LbBurnWindow *self = LB_BURN_WINDOW (data);
  const LbBurnSample *sample = sample_of_row (self, row);
  const LbVoice *voice = lb_job_get_voice (self->job);

  switch ((SampleColumn) column) {
  case SAMPLE_DAY:
    return day_text (self, sample->shift);
  case SAMPLE_PILE:
    return g_strdup (lb_job_get_fold (self->job)->piles[sample->pile].mark);
  case SAMPLE_BARS:
    return g_strdup_printf ("%u × %s", sample->n_bars,
                            sample->bar != NULL ? sample->bar->name : "?");
  case SAMPLE_TRIGGER:
    return lb_voice_quantity (voice, LB_QUANTITY_SHORT_TIME, sample->trigger_s);
  case SAMPLE_RATE:
    return lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE,
                                     sample->trigger_s / sample->steel_m2);
  case SAMPLE_VISIBILITY:
    return g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (sample->visibility)));
  case SAMPLE_REMARK:
    return lb_burn_sample_remark (model_of (self), sample);
  default:
    g_return_val_if_reached (NULL);
  }
}

/* The heading of a rate, with its unit. */
static char *
rate_heading (LbBurnWindow *self, const char *title)
{
  const char *unit = lb_quantity_unit (LB_QUANTITY_BURN_RATE, lb_job_get_voice (self->job)->units);

  /* Translators: a column's title, and its unit. */
  return g_strdup_printf (_ ("%s (%s)"), title, unit);
}

static void
show_samples (LbBurnWindow *self)
{
  g_autofree char *rate = rate_heading (self, _ ("Rate"));
  const LbPlainColumn columns[N_SAMPLE_COLUMNS] = {
    [SAMPLE_DAY] = { .title = _ ("Shift"), .min_chars = 16 },
    [SAMPLE_PILE] = { .title = _ ("Pile"), .min_chars = 6 },
    [SAMPLE_BARS] = { .title = _ ("Bars"), .min_chars = 15 },
    [SAMPLE_TRIGGER] = { .title = _ ("Trigger"), .is_number = TRUE, .min_chars = 7 },
    [SAMPLE_RATE] = { .title = rate, .is_number = TRUE, .min_chars = 8 },
    [SAMPLE_VISIBILITY] = { .title = _ ("Visibility"), .min_chars = 14 },
    [SAMPLE_REMARK] = { .title = _ ("Remark"), .min_chars = 16, .is_wide = TRUE },
  };

  lb_plain_table_set_columns (self->samples_view, columns, N_SAMPLE_COLUMNS);
  lb_plain_table_let_pick (self->samples_view);
  g_signal_group_set_target (self->pick_signals, gtk_column_view_get_model (self->samples_view));
  lb_plain_table_set_rows (self->samples_view, self->history->samples->len, sample_cell, self);
}

typedef enum {
  RATE_SIZE,
  RATE_VISIBILITY,
  RATE_LOW,
  RATE_LIKELY,
  RATE_HIGH,
  RATE_BARS,
  RATE_SAMPLES,
} RateColumn;

#define N_RATE_COLUMNS (RATE_SAMPLES + 1)

static char *
rate_cell (guint at, guint column, gpointer data)
{
  LbBurnWindow *self = LB_BURN_WINDOW (data);
  const RateRow *row = &g_array_index (self->rates, RateRow, at);
  const LbRange range = lb_burn_model_rate (model_of (self), row->bar, row->visibility);
  const LbVoice *voice = lb_job_get_voice (self->job);

  switch ((RateColumn) column) {
  case RATE_SIZE:
    return g_strdup (row->bar->name);
  case RATE_VISIBILITY:
    return g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (row->visibility)));
  case RATE_LOW:
    return lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE, range.low);
  case RATE_LIKELY:
    return lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE, range.likely);
  case RATE_HIGH:
    return lb_voice_quantity_number (voice, LB_QUANTITY_BURN_RATE, range.high);
  case RATE_BARS:
    return lb_voice_number (voice, row->n_bars, 0);
  case RATE_SAMPLES:
    return lb_voice_number (voice, row->n_samples, 0);
  default:
    g_return_val_if_reached (NULL);
  }
}

static void
find_rates (LbBurnWindow *self)
{
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  g_array_set_size (self->rates, 0);
  for (gsize i = 0; i < n; i++) {
    for (LbVisibility visibility = 0; visibility < LB_N_VISIBILITIES; visibility++) {
      RateRow row = { .bar = &bars[i], .visibility = visibility };

      lb_burn_history_count (self->history, row.bar, visibility, &row.n_bars, &row.n_samples);
      if (row.n_samples > 0)
        g_array_append_val (self->rates, row);
    }
  }
}

static void
show_rates (LbBurnWindow *self)
{
  g_autofree char *low = rate_heading (self, "P10");
  g_autofree char *likely = rate_heading (self, "P50");
  g_autofree char *high = rate_heading (self, "P90");
  const LbPlainColumn columns[N_RATE_COLUMNS] = {
    [RATE_SIZE] = { .title = _ ("Bar size"), .min_chars = 16 },
    [RATE_VISIBILITY] = { .title = _ ("Visibility"), .min_chars = 16, .is_wide = TRUE },
    [RATE_LOW] = { .title = low, .is_number = TRUE, .min_chars = 8 },
    [RATE_LIKELY] = { .title = likely, .is_number = TRUE, .min_chars = 8 },
    [RATE_HIGH] = { .title = high, .is_number = TRUE, .min_chars = 8 },
    [RATE_BARS] = { .title = _ ("Bars"), .is_number = TRUE, .min_chars = 6 },
    [RATE_SAMPLES] = { .title = _ ("Samples"), .is_number = TRUE, .min_chars = 8 },
  };

  find_rates (self);
  lb_plain_table_set_columns (self->rates_view, columns, N_RATE_COLUMNS);
  lb_plain_table_set_rows (self->rates_view, self->rates->len, rate_cell, self);
}

/* --- What the buttons do ------------------------------------------------------------------ */

static void
update_buttons (LbBurnWindow *self)
{
  const LbBurnSample *sample = picked (self);
  const gboolean can_record = sample != NULL && !lb_job_is_read_only (self->job);
  const gboolean is_shift = sample != NULL && is_shift_set_aside (self, sample->shift);

  gtk_widget_set_sensitive (self->aside_button, can_record && !sample->is_set_aside);
  gtk_widget_set_sensitive (self->in_button, can_record && (sample->is_set_aside || is_shift));
  gtk_button_set_label (GTK_BUTTON (self->in_button),
                        is_shift ? _ ("Take the _Shift In Again") : _ ("_Take In Again"));
  gtk_widget_set_sensitive (self->shift_button, sample != NULL);
}

static void
aside_clicked_cb (LbBurnWindow *self)
{
  const LbBurnSample *sample = picked (self);

  if (sample != NULL)
    lb_set_aside_ask (GTK_WIDGET (self), self->job, sample->pile, sample->shift);
}

static void
in_clicked_cb (LbBurnWindow *self)
{
  const LbBurnSample *sample = picked (self);

  if (sample != NULL)
    lb_set_aside_undo (GTK_WIDGET (self), self->job,
                       is_shift_set_aside (self, sample->shift) ? -1 : sample->pile, sample->shift);
}

/* Closes what stands over the job's window and shows the shift there. */
static void
shift_clicked_cb (LbBurnWindow *self)
{
  const LbBurnSample *sample = picked (self);
  g_autoptr (LbJob) job = g_object_ref (self->job);
  GtkWindow *above = GTK_WINDOW (self);

  if (sample == NULL)
    return;
  const int shift = sample->shift;

  while (gtk_window_get_transient_for (above) != NULL) {
    GtkWindow *below = gtk_window_get_transient_for (above);

    gtk_window_destroy (above);
    above = below;
  }
  lb_job_pick_shift (job, shift);
  gtk_widget_activate_action (GTK_WIDGET (above), "win.page-shift", NULL);
}

static void
show_rate (LbBurnWindow *self)
{
  const LbRange range = lb_burn_model_rate (model_of (self), NULL, LB_VISIBILITY_UNKNOWN);
  g_autofree char *rate = lb_burn_rate_text (lb_job_get_voice (self->job), &range);
  LbBurnBasis basis;

  lb_burn_model_basis (model_of (self), NULL, LB_VISIBILITY_UNKNOWN, &basis);

  g_autofree char *rests_on = lb_burn_basis_text (&basis);
  g_autofree char *words = g_strdup_printf (
    /* Translators: trigger time by steel area with its P10 and P90, and what that rests on. */
    _ ("Trigger time: %s · %s"), rate, rests_on);

  gtk_label_set_label (self->rate_label, words);
}

static void
update (LbBurnWindow *self)
{
  const guint before = lb_plain_table_get_picked (self->samples_view);

  g_clear_pointer (&self->history, lb_burn_history_free);
  self->history = lb_burn_history_new (lb_job_get_ledger (self->job), lb_job_get_fold (self->job));
  show_rate (self);
  show_samples (self);
  show_rates (self);
  /* The picked row says something else now and was put in anew. */
  lb_plain_table_pick (self->samples_view, before);
  update_buttons (self);
}

/* --- The window --------------------------------------------------------------------------- */

static GtkColumnView *
add_table (AdwViewStack *stack, const char *name, const char *title, const char *icon)
{
  GtkWidget *view = gtk_column_view_new (NULL);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_widget_add_css_class (view, "data-table");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), view);
  gtk_widget_set_vexpand (scroller, TRUE);
  adw_view_stack_page_set_icon_name (adw_view_stack_add_titled (stack, scroller, name, title),
                                     icon);
  return GTK_COLUMN_VIEW (view);
}

static GtkWidget *
add_button (LbBurnWindow *self, GtkWidget *bar, const char *label, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_action_bar_pack_start (GTK_ACTION_BAR (bar), button);
  return button;
}

static GtkWidget *
make_bar (LbBurnWindow *self)
{
  GtkWidget *bar = gtk_action_bar_new ();

  self->aside_button = add_button (self, bar, _ ("_Set Aside…"), G_CALLBACK (aside_clicked_cb));
  self->in_button = add_button (self, bar, _ ("_Take In Again"), G_CALLBACK (in_clicked_cb));
  self->shift_button = add_button (self, bar, _ ("_Open the Shift"), G_CALLBACK (shift_clicked_cb));
  return bar;
}

static void
lb_burn_window_dispose (GObject *object)
{
  LbBurnWindow *self = LB_BURN_WINDOW (object);

  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  g_clear_object (&self->job_signals);
  g_clear_object (&self->pick_signals);
  g_clear_pointer (&self->history, lb_burn_history_free);
  g_clear_pointer (&self->rates, g_array_unref);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_burn_window_parent_class)->dispose (object);
}

static void
lb_burn_window_class_init (LbBurnWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_burn_window_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
lb_burn_window_init (LbBurnWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *header = adw_header_bar_new ();
  GtkWidget *stack = adw_view_stack_new ();
  GtkWidget *switcher = adw_view_switcher_new ();
  GtkWidget *label = gtk_label_new (NULL);

  self->rates = g_array_new (FALSE, FALSE, sizeof (RateRow));
  self->rate_label = GTK_LABEL (label);
  gtk_label_set_wrap (self->rate_label, TRUE);
  gtk_label_set_xalign (self->rate_label, 0);
  gtk_widget_set_margin_start (label, 12);
  gtk_widget_set_margin_end (label, 12);
  gtk_widget_set_margin_top (label, 6);
  gtk_widget_set_margin_bottom (label, 6);
  self->samples_view = add_table (ADW_VIEW_STACK (stack), "samples", _ ("Samples"),
                                  "view-list-symbolic");
  self->rates_view = add_table (ADW_VIEW_STACK (stack), "rates", _ ("Rates"),
                                "power-profile-balanced-symbolic");
  g_signal_connect_swapped (self->samples_view, "activate", G_CALLBACK (shift_clicked_cb), self);
  adw_view_switcher_set_stack (ADW_VIEW_SWITCHER (switcher), ADW_VIEW_STACK (stack));
  adw_view_switcher_set_policy (ADW_VIEW_SWITCHER (switcher), ADW_VIEW_SWITCHER_POLICY_WIDE);
  adw_header_bar_set_title_widget (ADW_HEADER_BAR (header), switcher);

  gtk_box_append (GTK_BOX (box), header);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), stack);
  gtk_box_append (GTK_BOX (box), make_bar (self));
  adw_window_set_content (ADW_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Burning, Learned"));
  gtk_window_set_default_size (GTK_WINDOW (self), 960, 600);

  self->pick_signals = g_signal_group_new (GTK_TYPE_SINGLE_SELECTION);
  g_signal_group_connect_swapped (self->pick_signals, "notify::selected",
                                  G_CALLBACK (update_buttons), self);
  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (update), self);
}

LbBurnWindow *
lb_burn_window_new (GtkWindow *parent, LbJob *job)
{
  LbBurnWindow *self = g_object_new (LB_TYPE_BURN_WINDOW, "transient-for", parent, "modal", TRUE,
                                     NULL);

  self->job = g_object_ref (job);
  g_signal_group_set_target (self->job_signals, job);
  update (self);
  return self;
}
