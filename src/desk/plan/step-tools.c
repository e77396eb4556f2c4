/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/plan/step-tools.h"

#include "desk/plan/mark-picture.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _LbStepTools
{
  GtkWidget parent_instance;

  GtkWidget *label;
  GtkWidget *box;
  GtkToggleButton *buttons[LB_N_STEPS]; /* none for standing */
  int step;
};

G_DEFINE_FINAL_TYPE (LbStepTools, lb_step_tools, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

typedef struct
{
  const char *letter;
  const char *label;
  const char *tip;
} Words;

/* By LbStep. */
static const Words words[LB_N_STEPS] = {
  [LB_STEP_CLEANED] = { NC_ ("step letter", "C"), N_ ("Mark as cleaned"),
                        N_ ("Mark as cleaned: press this, then touch or box the piles") },
  [LB_STEP_SEVERED] = { NC_ ("step letter", "S"), N_ ("Mark as severed"),
                        N_ ("Mark as severed: press this, then touch or box the piles") },
  [LB_STEP_RIGGED] = { NC_ ("step letter", "R"), N_ ("Mark as rigged"),
                       N_ ("Mark as rigged: press this, then touch or box the piles") },
  [LB_STEP_PULLED] = { NC_ ("step letter", "P"), N_ ("Mark as pulled"),
                       N_ ("Mark as pulled: press this, then touch or box the piles") },
};

static void
toggled_cb (LbStepTools *self, GtkToggleButton *button)
{
  int step = LB_STEP_CLEANED;

  while (self->buttons[step] != button)
    step++;
  if (gtk_toggle_button_get_active (button))
    lb_step_tools_set_step (self, step);
  else if (self->step == step)
    lb_step_tools_set_step (self, -1);
}

/* "cleaned" where there is room for the words of all steps, which are kept equally wide so that all
 * turn into letters together. */
static GtkWidget *
word_or_letter_new (LbStep step)
{
  GtkWidget *squeezer = adw_squeezer_new ();
  GtkWidget *word = gtk_label_new (g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)));
  GtkWidget *letter = gtk_label_new (
    g_dpgettext2 (GETTEXT_PACKAGE, "step letter", words[step].letter));
  glong longest = 0;

  for (int i = LB_STEP_CLEANED; i < LB_N_STEPS; i++) {
    const char *name = g_dgettext (GETTEXT_PACKAGE, lb_step_name ((LbStep) i));

    longest = MAX (longest, g_utf8_strlen (name, -1));
  }
  gtk_label_set_width_chars (GTK_LABEL (word), (int) longest);
  gtk_widget_add_css_class (word, "strong");
  gtk_widget_add_css_class (letter, "strong");
  adw_squeezer_set_homogeneous (ADW_SQUEEZER (squeezer), FALSE);
  adw_squeezer_add (ADW_SQUEEZER (squeezer), word);
  adw_squeezer_add (ADW_SQUEEZER (squeezer), letter);
  return squeezer;
}

static void
add_button (LbStepTools *self, LbStep step)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_box_append (GTK_BOX (box), lb_mark_picture_new (step));
  gtk_box_append (GTK_BOX (box), word_or_letter_new (step));
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_set_tooltip_text (button, _ (words[step].tip));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (words[step].label), -1);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (GTK_BOX (self->box), button);
  self->buttons[step] = GTK_TOGGLE_BUTTON (button);
}

static void
lb_step_tools_dispose (GObject *object)
{
  LbStepTools *self = LB_STEP_TOOLS (object);

  g_clear_pointer (&self->label, gtk_widget_unparent);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (lb_step_tools_parent_class)->dispose (object);
}

static void
lb_step_tools_class_init (LbStepToolsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_step_tools_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);

  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_STEP_TOOLS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
lb_step_tools_init (LbStepTools *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  self->step = -1;
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  /* Translators: the letters of the steps follow. */
  self->label = gtk_label_new (_ ("Mark as"));
  gtk_widget_add_css_class (self->label, "dim-label");
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (self->box, "linked");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  for (int step = LB_STEP_CLEANED; step < LB_N_STEPS; step++)
    add_button (self, (LbStep) step);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Mark piles"), -1);
}

int
lb_step_tools_get_step (LbStepTools *self)
{
  g_return_val_if_fail (LB_IS_STEP_TOOLS (self), -1);

  return self->step;
}

void
lb_step_tools_set_step (LbStepTools *self, int step)
{
  g_return_if_fail (LB_IS_STEP_TOOLS (self));
  g_return_if_fail (step != LB_STEP_STANDING && step < LB_N_STEPS);

  if (self->step == step)
    return;
  self->step = step;
  for (int i = LB_STEP_CLEANED; i < LB_N_STEPS; i++)
    gtk_toggle_button_set_active (self->buttons[i], i == step);
  g_signal_emit (self, signals[CHANGED], 0);
}
