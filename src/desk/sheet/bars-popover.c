/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/bars-popover.h"

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

struct _LbBarsPopover
{
  GtkPopover parent_instance;

  /* Template widgets */
  GtkSpinButton *count_spin;
  GtkCheckButton *next_check;
  GtkEntry *gone_entry;
  GtkWidget *gone_button;
  GtkLabel *gone_note;

  LbJob *job;
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbBarsPopover, lb_bars_popover, GTK_TYPE_POPOVER)

static LbBarSet
next_bars (const LbCutPlan *plan, guint count)
{
  LbBarSet bars = 0;

  for (gsize i = 0; i < MIN (count, plan->n_order); i++)
    bars |= LB_BAR (plan->order[i]);
  return bars;
}

static void
record_cb (LbBarsPopover *self)
{
  const guint count = (guint) gtk_spin_button_get_value_as_int (self->count_spin);
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  g_autofree char *words = NULL;
  GError *error = NULL;
  LbSheetPile shown;
  gboolean is_recorded;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);
  words = g_strdup_printf (
    /* Translators: how many bars, and the pile: “2 bars burned at G7” */
    g_dngettext (GETTEXT_PACKAGE, "%u bar burned at %s", "%u bars burned at %s", count), count,
    shown.pile->mark);

  if (gtk_check_button_get_active (self->next_check))
    is_recorded = lb_job_burn_bars (self->job, self->pile, next_bars (&shown.plan, count), &error);
  else
    is_recorded = lb_job_burn_count (self->job, self->pile, count, &error);

  gtk_popover_popdown (GTK_POPOVER (self));
  if (is_recorded)
    lb_say (parent, words, TRUE);
  else
    lb_say_error (parent, _ ("The bars were not recorded"), error);
}

/* The bars typed, which must be the pile's; 0 and the reason when they are not. */
static LbBarSet
read_gone (LbBarsPopover *self, GError **error)
{
  const guint n_bars = lb_job_get_fold (self->job)->piles[self->pile].n_bars;
  guint8 bars[LB_BARS_MAX];
  LbBarSet set = 0;
  gsize n;

  if (!lb_bar_numbers_from_text (gtk_editable_get_text (GTK_EDITABLE (self->gone_entry)), bars, &n,
                                 error))
    return 0;
  for (gsize i = 0; i < n; i++)
    set |= LB_BAR (bars[i]);
  if (n_bars == 0 || (set & ~lb_bar_set_all (n_bars)) == 0)
    return set;
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, _ ("The pile has bars 1 to %u"),
               n_bars);
  return 0;
}

static void
gone_changed_cb (LbBarsPopover *self)
{
  const gboolean is_empty = *gtk_editable_get_text (GTK_EDITABLE (self->gone_entry)) == '\0';
  g_autoptr (GError) error = NULL;
  const LbBarSet bars = is_empty || self->job == NULL ? 0 : read_gone (self, &error);

  gtk_widget_set_sensitive (self->gone_button, bars != 0);
  gtk_label_set_text (self->gone_note, error != NULL ? error->message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->gone_note), error != NULL);
}

static void
gone_cb (LbBarsPopover *self)
{
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  const LbBarSet bars = self->job != NULL ? read_gone (self, NULL) : 0;
  g_autofree char *numbers = lb_bar_numbers_text (bars);
  g_autofree char *words = NULL;
  GError *error = NULL;

  if (bars == 0)
    return;
  words = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Bar %s found gone", "Bars %s found gone",
                                        lb_bar_set_count (bars)),
                           numbers);
  const gboolean is_recorded = lb_job_find_gone (self->job, self->pile, bars, &error);

  gtk_editable_set_text (GTK_EDITABLE (self->gone_entry), "");
  gtk_popover_popdown (GTK_POPOVER (self));
  if (is_recorded)
    lb_say (parent, words, TRUE);
  else
    lb_say_error (parent, _ ("The bars were not recorded"), error);
}

static void
lb_bars_popover_dispose (GObject *object)
{
  g_clear_object (&LB_BARS_POPOVER (object)->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_BARS_POPOVER);
  G_OBJECT_CLASS (lb_bars_popover_parent_class)->dispose (object);
}

static void
lb_bars_popover_class_init (LbBarsPopoverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_bars_popover_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/bars-popover.ui");
  gtk_widget_class_bind_template_child (widget_class, LbBarsPopover, count_spin);
  gtk_widget_class_bind_template_child (widget_class, LbBarsPopover, next_check);
  gtk_widget_class_bind_template_child (widget_class, LbBarsPopover, gone_button);
  gtk_widget_class_bind_template_child (widget_class, LbBarsPopover, gone_entry);
  gtk_widget_class_bind_template_child (widget_class, LbBarsPopover, gone_note);
  gtk_widget_class_bind_template_callback (widget_class, gone_cb);
  gtk_widget_class_bind_template_callback (widget_class, gone_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
}

static void
lb_bars_popover_init (LbBarsPopover *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
lb_bars_popover_show (LbBarsPopover *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_BARS_POPOVER (self));

  const gboolean is_another = job != self->job || pile != self->pile;

  g_set_object (&self->job, job);
  self->pile = pile;
  if (is_another) {
    gtk_spin_button_set_value (self->count_spin, 1);
    gtk_editable_set_text (GTK_EDITABLE (self->gone_entry), "");
  }
  if (job != NULL)
    gtk_spin_button_set_range (self->count_spin, 1,
                               MAX (lb_job_get_fold (job)->states[pile].n_left, 1));
}

void
lb_bars_popover_ask_gone (LbBarsPopover *self, guint bar)
{
  g_return_if_fail (LB_IS_BARS_POPOVER (self));

  g_autofree char *number = g_strdup_printf ("%u", bar + 1);

  gtk_editable_set_text (GTK_EDITABLE (self->gone_entry), number);
  gtk_widget_grab_focus (self->gone_button);
}
