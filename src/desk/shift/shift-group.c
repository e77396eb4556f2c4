/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The listed rows are made again only when the entries they stand for are others, so that focus
 * and a reader's place survive what is recorded elsewhere. */
#include "desk/shift/shift-group.h"

#include "book/clock-text.h"
#include "desk/shell/say.h"
#include "desk/shell/take-back-button.h"
#include "draw/plan-words.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LbJob *job;
  GSignalGroup *job_signals;
  GPtrArray *rows; /* borrowed: the group's children */
  GArray *seqs;    /* gint64: the entries they stand for */
} LbShiftGroupPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (LbShiftGroup, lb_shift_group, ADW_TYPE_PREFERENCES_GROUP)

static LbShiftGroupPrivate *
get_private (LbShiftGroup *self)
{
  return lb_shift_group_get_instance_private (self);
}

static void
add_row (LbShiftGroup *self, const LbEntry *entry)
{
  LbShiftGroupPrivate *priv = get_private (self);
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (self);
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());
  g_autofree char *text = lb_entry_text (lb_job_get_voice (priv->job),
                                         lb_job_get_ledger (priv->job), entry);
  g_autofree char *at = lb_clock_to_text (entry->at_us);
  g_autofree char *said = *entry->who == '\0' ? g_strdup (at)
                                              : g_strdup_printf ("%s · %s", at, entry->who);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  adw_action_row_set_subtitle (row, said);
  if (klass->suffix != NULL)
    adw_action_row_add_suffix (row, klass->suffix (self, entry));
  adw_action_row_add_suffix (row, lb_take_back_button_new (priv->job, entry->act));
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self), GTK_WIDGET (row));
  g_ptr_array_add (priv->rows, row);
  g_array_append_val (priv->seqs, entry->seq);
}

/* Indices of the entries to list, newest first. */
static GArray *
find_entries (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  const guint kinds = LB_SHIFT_GROUP_GET_CLASS (self)->kinds;
  const LbLedger *ledger = lb_job_get_ledger (priv->job);
  const LbFold *fold = lb_job_get_fold (priv->job);
  const int shift = lb_job_get_shift (priv->job);
  GArray *found = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = (guint) fold->n_entries; i-- > 0 && shift >= 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (fold->is_alive[i] && entry->shift == shift && (kinds & LB_ENTRY_KIND_BIT (entry->kind)))
      g_array_append_val (found, i);
  }

  return found;
}

static gboolean
is_shown (LbShiftGroup *self, const GArray *found)
{
  LbShiftGroupPrivate *priv = get_private (self);
  const LbLedger *ledger = lb_job_get_ledger (priv->job);

  if (found->len != priv->seqs->len)
    return FALSE;
  for (guint i = 0; i < found->len; i++) {
    if (lb_ledger_entry (ledger, g_array_index (found, guint, i))->seq !=
        g_array_index (priv->seqs, gint64, i))
      return FALSE;
  }

  return TRUE;
}

static void
show_entries (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  g_autoptr (GArray) found = find_entries (self);

  if (is_shown (self, found))
    return;
  for (guint i = 0; i < priv->rows->len; i++)
    adw_preferences_group_remove (ADW_PREFERENCES_GROUP (self), g_ptr_array_index (priv->rows, i));
  g_ptr_array_set_size (priv->rows, 0);
  g_array_set_size (priv->seqs, 0);
  for (guint i = 0; i < found->len; i++)
    add_row (self,
             lb_ledger_entry (lb_job_get_ledger (priv->job), g_array_index (found, guint, i)));
}

static void
update (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);
  LbShiftGroupClass *klass = LB_SHIFT_GROUP_GET_CLASS (self);

  if (priv->job == NULL)
    return;
  gtk_widget_set_sensitive (GTK_WIDGET (self), !lb_job_is_read_only (priv->job));
  show_entries (self);
  if (klass->update != NULL)
    klass->update (self);
}

static void
lb_shift_group_dispose (GObject *object)
{
  LbShiftGroupPrivate *priv = get_private (LB_SHIFT_GROUP (object));

  g_clear_object (&priv->job_signals);
  g_clear_object (&priv->job);

  G_OBJECT_CLASS (lb_shift_group_parent_class)->dispose (object);
}

static void
lb_shift_group_finalize (GObject *object)
{
  LbShiftGroupPrivate *priv = get_private (LB_SHIFT_GROUP (object));

  g_ptr_array_unref (priv->rows);
  g_array_unref (priv->seqs);

  G_OBJECT_CLASS (lb_shift_group_parent_class)->finalize (object);
}

static void
lb_shift_group_class_init (LbShiftGroupClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_shift_group_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_shift_group_finalize;
}

static void
lb_shift_group_init (LbShiftGroup *self)
{
  LbShiftGroupPrivate *priv = get_private (self);

  priv->rows = g_ptr_array_new ();
  priv->seqs = g_array_new (FALSE, FALSE, sizeof (gint64));
  priv->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (priv->job_signals, "changed", G_CALLBACK (update), self);
}

void
lb_shift_group_set_job (LbShiftGroup *self, LbJob *job)
{
  LbShiftGroupPrivate *priv = get_private (self);

  g_return_if_fail (LB_IS_SHIFT_GROUP (self));
  g_return_if_fail (job == NULL || LB_IS_JOB (job));

  if (!g_set_object (&priv->job, job))
    return;
  g_signal_group_set_target (priv->job_signals, job);
  update (self);
}

LbJob *
lb_shift_group_get_job (LbShiftGroup *self)
{
  g_return_val_if_fail (LB_IS_SHIFT_GROUP (self), NULL);

  return get_private (self)->job;
}

const LbShift *
lb_shift_group_get_shift (LbShiftGroup *self)
{
  LbJob *job = lb_shift_group_get_job (self);
  const int shift = job != NULL ? lb_job_get_shift (job) : -1;

  return shift >= 0 ? lb_ledger_shift (lb_job_get_ledger (job), (guint) shift) : NULL;
}

gboolean
lb_shift_group_record (LbShiftGroup *self, const LbDraft *draft)
{
  GError *error = NULL;

  g_return_val_if_fail (LB_IS_SHIFT_GROUP (self), FALSE);

  if (lb_job_record (lb_shift_group_get_job (self), draft, 1, &error))
    return TRUE;
  lb_say_error (GTK_WIDGET (self), _ ("That was not recorded"), error);

  return FALSE;
}

void
lb_shift_group_mark_row (GtkWidget *row, const GError *error)
{
  if (error == NULL) {
    gtk_widget_remove_css_class (row, "error");
    gtk_widget_set_tooltip_text (row, NULL);
    return;
  }
  gtk_widget_add_css_class (row, "error");
  gtk_widget_set_tooltip_text (row, error->message);
  gtk_widget_grab_focus (row);
  lb_say (row, error->message, FALSE);
}

void
lb_shift_group_title_row (LbShiftGroup *self,
                          GtkWidget *row,
                          const char *title,
                          LbQuantity quantity)
{
  LbJob *job = lb_shift_group_get_job (self);
  /* Translators: what is typed, and its unit. */
  g_autofree char *whole = g_strdup_printf (
    _ ("%s (%s)"), title, lb_quantity_unit (quantity, lb_job_get_voice (job)->units));

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), whole);
}

gboolean
lb_shift_group_read_amount (LbShiftGroup *self, GtkWidget *row, LbQuantity quantity, double *out_si)
{
  LbJob *job = lb_shift_group_get_job (self);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row));
  g_autoptr (GError) error = NULL;
  double si = 0;

  if (lb_quantity_from_text (quantity, lb_job_get_voice (job)->units, text, &si, &error) &&
      !(si > 0))
    g_set_error (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("“%s” must be more than nothing"), text);
  lb_shift_group_mark_row (row, error);
  if (error != NULL)
    return FALSE;
  *out_si = si;

  return TRUE;
}
