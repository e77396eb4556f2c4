/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/pile-steps.h"

#include "desk/plan/mark-picture.h"
#include "desk/sheet/pile-event.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

#define FIRST_STEP LB_STEP_CLEANED

typedef struct
{
  GtkWidget *button;
  GtkWidget *tick;
} StepButton;

struct _LbPileSteps
{
  GtkBox parent_instance;

  /* Template widgets */
  GtkGrid *grid;
  GtkWidget *more_button;

  StepButton buttons[LB_N_STEPS]; /* none for standing */
  LbJob *job;
  GArray *piles; /* guint */
};

G_DEFINE_FINAL_TYPE (LbPileSteps, lb_pile_steps, GTK_TYPE_BOX)

static const char *
step_title (LbStep step)
{
  switch (step) {
  case LB_STEP_CLEANED:
    return C_ ("button", "_Cleaned");
  case LB_STEP_SEVERED:
    return C_ ("button", "_Severed");
  case LB_STEP_RIGGED:
    return C_ ("button", "_Rigged");
  case LB_STEP_PULLED:
    return C_ ("button", "_Pulled");
  case LB_STEP_STANDING:
  default:
    g_return_val_if_reached (NULL);
  }
}

static guint
pile_at (LbPileSteps *self, guint i)
{
  return g_array_index (self->piles, guint, i);
}

static guint
count_done (LbPileSteps *self, LbStep step)
{
  const LbFold *fold = lb_job_get_fold (self->job);
  guint n = 0;

  for (guint i = 0; i < self->piles->len; i++)
    n += (fold->states[pile_at (self, i)].done & LB_STEP_BIT (step)) != 0;
  return n;
}

static void
say_marked (LbPileSteps *self, LbStep step, guint n)
{
  const char *name = g_dgettext (GETTEXT_PACKAGE, lb_step_name (step));
  g_autofree char *words = NULL;

  if (self->piles->len == 1)
    words = g_strdup_printf (n > 0 ? _ ("%s: %s") : _ ("%s was %s already"),
                             lb_job_get_fold (self->job)->piles[pile_at (self, 0)].mark, name);
  else
    words = g_strdup_printf (
      /* Translators: how many piles, and the step they reached. */
      g_dngettext (GETTEXT_PACKAGE, "%u pile: %s", "%u piles: %s", n), n, name);
  lb_say (GTK_WIDGET (self), words, n > 0);
}

static void
step_clicked_cb (LbPileSteps *self, GtkButton *button)
{
  LbStep step = FIRST_STEP;
  guint n;
  GError *error = NULL;

  if (self->job == NULL || self->piles->len == 0)
    return;
  while (self->buttons[step].button != GTK_WIDGET (button))
    step++;
  n = self->piles->len - count_done (self, step);
  if (n > 0 && !lb_job_mark_step (self->job, (const guint *) (gpointer) self->piles->data,
                                  self->piles->len, step, &error))
    lb_say_error (GTK_WIDGET (self), _ ("The step was not recorded"), error);
  else
    say_marked (self, step, n);
}

static void
event_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  LbPileSteps *self = LB_PILE_STEPS (widget);

  if (self->job == NULL || self->piles->len != 1)
    return;
  if (g_str_equal (action, "pile.drawn"))
    lb_pile_event_drawn (widget, self->job, pile_at (self, 0));
  else if (g_str_equal (action, "pile.broke"))
    lb_pile_event_broke (widget, self->job, pile_at (self, 0));
  else
    lb_pile_event_note (widget, self->job, pile_at (self, 0));
}

/* When it was reached, or what pressing does. */
static char *
step_tip (LbPileSteps *self, LbStep step, gboolean is_done)
{
  const LbFold *fold = lb_job_get_fold (self->job);
  const int shift = self->piles->len == 1 ? fold->states[pile_at (self, 0)].step_shift[step] : -1;
  g_autofree char *day = NULL;

  if (is_done && shift < 0)
    return g_strdup (_ ("Reached"));
  if (!is_done)
    return g_strdup (step == LB_STEP_SEVERED ? _ ("Record now; the bars left are burned with it")
                                             : _ ("Record now"));
  day = lb_day_text (lb_ledger_shift (lb_job_get_ledger (self->job), (guint) shift)->day);
  /* Translators: a step reached on that day. */
  return g_strdup_printf (_ ("Reached %s"), day);
}

static void
update_button (LbPileSteps *self, LbStep step)
{
  const StepButton *button = &self->buttons[step];
  const gboolean is_done = count_done (self, step) == self->piles->len;
  g_autofree char *tip = step_tip (self, step, is_done);

  gtk_widget_set_visible (button->tick, is_done);
  gtk_widget_set_tooltip_text (button->button, tip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button->button),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, tip, -1);
  gtk_accessible_update_state (
    GTK_ACCESSIBLE (button->button), GTK_ACCESSIBLE_STATE_PRESSED,
    is_done ? GTK_ACCESSIBLE_TRISTATE_TRUE : GTK_ACCESSIBLE_TRISTATE_FALSE, -1);
}

static void
add_button (LbPileSteps *self, LbStep step)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  /* The mnemonic finds the button round it. Told of it the label would name it a second time. */
  GtkWidget *label = gtk_label_new_with_mnemonic (step_title (step));
  GtkWidget *tick = gtk_image_new_from_icon_name ("object-select-symbolic");
  const int place = step - FIRST_STEP;

  gtk_widget_set_hexpand (label, TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (box), lb_mark_picture_new (step));
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), tick);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "finger");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gtk_label_get_text (GTK_LABEL (label)), -1);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (step_clicked_cb), self);
  gtk_grid_attach (self->grid, button, place % 2, place / 2, 1, 1);
  self->buttons[step] = (StepButton){ button, tick };
}

static void
lb_pile_steps_dispose (GObject *object)
{
  LbPileSteps *self = LB_PILE_STEPS (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->piles, g_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_PILE_STEPS);
  G_OBJECT_CLASS (lb_pile_steps_parent_class)->dispose (object);
}

static void
lb_pile_steps_class_init (LbPileStepsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_steps_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-steps.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileSteps, grid);
  gtk_widget_class_bind_template_child (widget_class, LbPileSteps, more_button);
  gtk_widget_class_install_action (widget_class, "pile.broke", NULL, event_cb);
  gtk_widget_class_install_action (widget_class, "pile.drawn", NULL, event_cb);
  gtk_widget_class_install_action (widget_class, "pile.note", NULL, event_cb);
}

static void
lb_pile_steps_init (LbPileSteps *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->piles = g_array_new (FALSE, FALSE, sizeof (guint));
  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++)
    add_button (self, step);
}

void
lb_pile_steps_show (LbPileSteps *self, LbJob *job, const guint *piles, gsize n)
{
  g_return_if_fail (LB_IS_PILE_STEPS (self));

  g_set_object (&self->job, job);
  g_array_set_size (self->piles, 0);
  if (job == NULL)
    return;
  g_array_append_vals (self->piles, piles, (guint) n);
  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++)
    update_button (self, step);
  gtk_widget_set_sensitive (GTK_WIDGET (self), !lb_job_is_read_only (job));
  gtk_widget_set_visible (self->more_button, n == 1);
}
