/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A dive is typed as a hand writes it down: who and how deep, then the three times, then what it did.
 * After it is recorded all that the next dive is likely to share stays, the diver becomes the one who
 * has been up longest, and the hands are at the next time.
 *
 * A time may be typed as minutes after the one before it, "+52". */
#include "desk/shift/dive-form.h"

#include "book/clock-text.h"
#include "book/dive-said.h"
#include "book/mark-list.h"
#include "desk/shift/limit-bar.h"
#include "draw/dive-words.h"
#include "draw/record-words.h"
#include "trade/bottom-time.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _LbDiveForm
{
  GtkBox parent_instance;

  /* Template widgets */
  LbField *bars_field;
  LbField *depth_field;
  LbField *diver_field;
  LbField *left_bottom_field;
  LbField *left_surface_field;
  LbField *mode_field;
  LbField *oxygen_field;
  LbField *pile_field;
  LbField *reached_surface_field;
  LbField *rods_field;
  AdwActionRow *typed_row;
  LbField *visibility_field;
  LbField *work_field;

  /* Borrowed */
  LbShiftGroup *group; /* NULL before there is a job; likewise the log */
  const LbDiveLog *log;
  GtkWidget *typed_bar; /* NULL while nothing can be compared */

  char *divers; /* that complete themselves now */
};

G_DEFINE_FINAL_TYPE (LbDiveForm, lb_dive_form, GTK_TYPE_BOX)

enum {
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* --- What is typed ------------------------------------------------------------------------- */

static const char *
text_of (LbField *field)
{
  return lb_field_get_text (field);
}

static LbJob *
job_of (LbDiveForm *self)
{
  return lb_shift_group_get_job (self->group);
}

/* @before_us: the time that minutes with a plus are counted from, 0 for none. */
static gboolean
clock_from_text (LbDiveForm *self,
                 const char *text,
                 gint64 before_us,
                 gint64 *out_us,
                 GError **error)
{
  const LbShift shift = lb_shift_group_shift_of_times (self->group);
  double minutes_s;

  if (*text != '+' || before_us == 0)
    return lb_clock_from_text (&shift, text, out_us, error);
  if (!lb_quantity_from_text (LB_QUANTITY_TIME, LB_UNITS_METRIC, text + 1, &minutes_s, error))
    return FALSE;
  *out_us = before_us + (gint64) (minutes_s * G_USEC_PER_SEC);
  return TRUE;
}

/* Only the last time may be left empty. */
static gboolean
read_time (LbDiveForm *self,
           LbField *field,
           gboolean may_be_empty,
           gint64 before_us,
           gint64 *out_us)
{
  g_autoptr (GError) error = NULL;
  gint64 us = 0;

  if (!may_be_empty || *text_of (field) != '\0')
    clock_from_text (self, text_of (field), before_us, &us, &error);
  lb_field_mark (field, error);
  *out_us = us;

  return error == NULL;
}

static gboolean
read_diver (LbDiveForm *self, const char **out_diver)
{
  g_autoptr (GError) error = NULL;

  if (*text_of (self->diver_field) == '\0')
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("Say who dived: a role or initials"));
  lb_field_mark (self->diver_field, error);
  *out_diver = text_of (self->diver_field);

  return error == NULL;
}

/* NULL with the field marked when it names no piles; none at all is a list of none. */
static GArray *
read_piles (LbDiveForm *self)
{
  const char *marks = text_of (self->pile_field);
  g_autoptr (GError) error = NULL;
  GArray *piles = *marks != '\0'
                    ? lb_mark_list_read (lb_job_get_fold (job_of (self)), marks, &error)
                    : g_array_new (FALSE, FALSE, sizeof (guint));

  lb_field_mark (self->pile_field, error);
  return piles;
}

static gboolean
read_bars (LbDiveForm *self, guint *out_n)
{
  g_autoptr (GError) error = NULL;
  double bars = 0;

  if (!lb_shift_group_read_if_said (self->group, self->bars_field, LB_QUANTITY_COUNT, &bars))
    return FALSE;
  if (bars > LB_BARS_MAX || bars > floor (bars))
    g_set_error (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("Bars are counted in whole numbers, up to %d"), LB_BARS_MAX);
  lb_field_mark (self->bars_field, error);
  *out_n = (guint) bars;
  return error == NULL;
}

static gboolean
is_in_order (LbDiveForm *self, const LbDiveSaid *said)
{
  LbField *wrong = self->left_bottom_field;
  g_autoptr (GError) error = NULL;

  if (said->left_bottom_us <= said->left_surface_us) {
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("The diver left bottom before leaving the surface; check the times"));
  } else if (said->reached_us != 0 && said->reached_us < said->left_bottom_us) {
    g_set_error_literal (
      &error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
      _ ("The diver reached the surface before leaving bottom; check the times"));
    wrong = self->reached_surface_field;
  }
  if (error == NULL)
    return TRUE;
  lb_field_mark (wrong, error);

  return FALSE;
}

static gboolean
read_dive (LbDiveForm *self, LbDiveSaid *said)
{
  said->mode = lb_shift_word_from_text (LB_WORDS_DIVE_MODE, text_of (self->mode_field));
  said->visibility = text_of (self->visibility_field);
  said->work = text_of (self->work_field);
  return read_diver (self, &said->diver) &&
         lb_shift_group_read_amount (self->group, self->depth_field, LB_QUANTITY_LENGTH,
                                     &said->depth_m) &&
         read_time (self, self->left_surface_field, FALSE, 0, &said->left_surface_us) &&
         read_time (self, self->left_bottom_field, FALSE, said->left_surface_us,
                    &said->left_bottom_us) &&
         read_time (self, self->reached_surface_field, TRUE, said->left_bottom_us,
                    &said->reached_us) &&
         is_in_order (self, said) && read_bars (self, &said->n_bars) &&
         lb_shift_group_read_if_said (self->group, self->rods_field, LB_QUANTITY_COUNT,
                                      &said->rods) &&
         lb_shift_group_read_if_said (self->group, self->oxygen_field, LB_QUANTITY_GAS,
                                      &said->oxygen_m3);
}

/* --- What is recorded ----------------------------------------------------------------------- */

/* Who of the shift's divers has been up longest; NULL when only one dived. */
static const char *
next_diver (LbDiveForm *self, const char *last)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  const int shift = lb_job_get_shift (job_of (self));
  const LbEntry *next = NULL;

  for (gsize i = 0; i < fold->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (lb_job_get_ledger (job_of (self)), (guint) i);
    const LbEntry *latest;

    if (entry->kind != LB_ENTRY_DIVE || entry->shift != shift || !fold->is_alive[i] ||
        lb_is_same_diver (entry->what, last))
      continue;
    latest = lb_dive_log_last (self->log, entry->what);
    if (latest != NULL && (next == NULL || latest->start_us < next->start_us))
      next = latest;
  }
  return next != NULL ? next->what : NULL;
}

static void
begin_again (LbDiveForm *self)
{
  LbField *const fields[] = {
    self->left_surface_field, self->left_bottom_field, self->reached_surface_field,
    self->bars_field,         self->rods_field,        self->oxygen_field
  };
  g_autofree char *last = g_strdup (text_of (self->diver_field));
  const char *next = next_diver (self, last);

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    lb_field_set_text (fields[i], "");
  if (next != NULL)
    lb_field_set_text (self->diver_field, next);
  gtk_widget_grab_focus (GTK_WIDGET (self->left_surface_field));
}

static void
record_dive (LbDiveForm *self)
{
  LbDiveSaid said = { .depth_m = (double) NAN };
  g_autoptr (GStringChunk) strings = g_string_chunk_new (256);
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autoptr (GArray) piles = NULL;
  g_autoptr (GError) error = NULL;

  if (self->group == NULL || !read_dive (self, &said))
    return;
  piles = read_piles (self);
  if (piles == NULL)
    return;
  said.piles = (const guint *) (gpointer) piles->data;
  said.n_piles = piles->len;
  if (!lb_gesture_dive (drafts, lb_job_get_fold (job_of (self)), &said, strings, &error)) {
    lb_field_mark (self->pile_field, error);
    return;
  }
  if (lb_shift_group_record_all (self->group, (const LbDraft *) (gpointer) drafts->data,
                                 drafts->len))
    begin_again (self);
}

/* --- What is left ---------------------------------------------------------------------------- */

double
lb_dive_form_get_depth (LbDiveForm *self)
{
  double depth_m = (double) NAN;

  g_return_val_if_fail (LB_IS_DIVE_FORM (self), (double) NAN);

  if (self->group == NULL ||
      !lb_quantity_from_text (LB_QUANTITY_LENGTH, lb_job_get_voice (job_of (self))->units,
                              text_of (self->depth_field), &depth_m, NULL) ||
      !(depth_m > 0))
    return (double) NAN;
  return depth_m;
}

/* A time in the form, 0 while there is none. */
static gint64
typed_time (LbDiveForm *self, LbField *field, gint64 before_us)
{
  gint64 us = 0;

  clock_from_text (self, text_of (field), before_us, &us, NULL);
  return us;
}

static void
show_bar (LbDiveForm *self, const LbDiveLeft *left, double bottom_s)
{
  const gboolean is_past = bottom_s > left->open_s;
  g_autofree char *figures = lb_bottom_time_text (left, bottom_s);

  self->typed_bar = lb_limit_bar_new (
    bottom_s + left->residual_s + left->spent_s, left->limit_s, figures,
    is_past ? g_dgettext (GETTEXT_PACKAGE, lb_dive_left_reason (LB_DIVE_LEFT_PAST_LIMIT)) : NULL);
  adw_action_row_add_suffix (self->typed_row, self->typed_bar);
}

/* The dive in the form: what it has, and how much of that the typed bottom time takes. */
void
lb_dive_form_show_left (LbDiveForm *self)
{
  const double depth_m = lb_dive_form_get_depth (self);
  gint64 start_us;
  g_autofree char *said = NULL;

  g_return_if_fail (LB_IS_DIVE_FORM (self));

  if (self->group == NULL)
    return;
  start_us = typed_time (self, self->left_surface_field, 0);
  if (self->typed_bar != NULL)
    adw_action_row_remove (self->typed_row, g_steal_pointer (&self->typed_bar));
  gtk_widget_set_visible (GTK_WIDGET (self->typed_row), *text_of (self->diver_field) != '\0' &&
                                                          !isnan (depth_m) && start_us != 0);
  if (!gtk_widget_get_visible (GTK_WIDGET (self->typed_row)))
    return;

  const LbDiveLeft left = lb_dive_log_left (self->log, text_of (self->diver_field), depth_m,
                                            start_us);
  const double bottom_s = lb_bottom_time (start_us,
                                          typed_time (self, self->left_bottom_field, start_us));

  said = lb_dive_left_text (lb_job_get_voice (job_of (self)), &left, depth_m, start_us);
  adw_action_row_set_subtitle (self->typed_row, said);
  if (left.state == LB_DIVE_LEFT_KNOWN && isfinite (left.limit_s) && !isnan (bottom_s))
    show_bar (self, &left, bottom_s);
}

static void
changed_cb (LbDiveForm *self)
{
  lb_dive_form_show_left (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
has_name (const GPtrArray *names, const char *name)
{
  for (guint i = 0; i < names->len; i++)
    if (lb_is_same_diver (g_ptr_array_index (names, i), name))
      return TRUE;
  return FALSE;
}

/* Who dived in this shift or the one before it. */
static void
offer_divers (LbDiveForm *self)
{
  const LbLedger *ledger = lb_job_get_ledger (job_of (self));
  const int present = lb_job_get_shift (job_of (self));
  const int shift = present >= 0 ? present : (int) ledger->shifts->len;
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *joined = NULL;

  for (guint i = 0; i < lb_job_get_fold (job_of (self))->n_entries; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->kind == LB_ENTRY_DIVE && entry->shift >= shift - 1 && entry->shift <= shift &&
        !has_name (names, entry->what))
      g_ptr_array_add (names, (gpointer) entry->what);
  }
  g_ptr_array_add (names, NULL);
  joined = g_strjoinv ("\n", (char **) names->pdata);
  if (g_strcmp0 (joined, self->divers) == 0)
    return;
  g_free (self->divers);
  self->divers = g_steal_pointer (&joined);
  lb_field_complete (self->diver_field, (const char *const *) names->pdata);
}

void
lb_dive_form_update (LbDiveForm *self, LbShiftGroup *group, const LbDiveLog *log)
{
  g_return_if_fail (LB_IS_DIVE_FORM (self));
  g_return_if_fail (LB_IS_SHIFT_GROUP (group));

  self->group = group;
  self->log = log;
  lb_shift_group_caption (group, self->depth_field, _ ("Pneumo depth"), LB_QUANTITY_LENGTH);
  lb_shift_group_caption (group, self->oxygen_field, _ ("Oxygen"), LB_QUANTITY_GAS);
  offer_divers (self);
  lb_dive_form_show_left (self);
}

static void
lb_dive_form_dispose (GObject *object)
{
  LbDiveForm *self = LB_DIVE_FORM (object);

  self->group = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_DIVE_FORM);
  g_clear_pointer (&self->divers, g_free);

  G_OBJECT_CLASS (lb_dive_form_parent_class)->dispose (object);
}

static void
lb_dive_form_class_init (LbDiveFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_dive_form_dispose;
  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_DIVE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);

  g_type_ensure (LB_TYPE_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/lastbent/Lastbent/dive-form.ui");
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, bars_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, depth_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, diver_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, left_bottom_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, left_surface_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, mode_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, oxygen_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, pile_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, reached_surface_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, rods_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, typed_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, visibility_field);
  gtk_widget_class_bind_template_child (widget_class, LbDiveForm, work_field);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_dive);
}

static void
lb_dive_form_init (LbDiveForm *self)
{
  g_autoptr (GPtrArray) modes = g_ptr_array_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  for (const char *const *word = lb_shift_words (LB_WORDS_DIVE_MODE); *word != NULL; word++)
    g_ptr_array_add (modes, (gpointer) lb_shift_word_name (LB_WORDS_DIVE_MODE, *word));
  g_ptr_array_add (modes, NULL);
  lb_field_complete (self->mode_field, (const char *const *) modes->pdata);
}
