/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/bars-popover.h"

#include "desk/sheet/sheet-pile.h"
#include "desk/shell/say.h"

#include <glib/gi18n-lib.h>

struct _LbBarsPopover
{
  GtkPopover parent_instance;

  /* Template widgets */
  GtkSpinButton *count_spin;
  GtkCheckButton *next_check;

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

  if (job != self->job || pile != self->pile)
    gtk_spin_button_set_value (self->count_spin, 1);
  g_set_object (&self->job, job);
  self->pile = pile;
  if (job != NULL)
    gtk_spin_button_set_range (self->count_spin, 1,
                               MAX (lb_job_get_fold (job)->states[pile].n_left, 1));
}
