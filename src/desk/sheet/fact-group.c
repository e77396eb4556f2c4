/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rows are made when they are first looked at: most piles are read and not corrected. */
#include "desk/sheet/fact-group.h"

#include "desk/sheet/fact-field.h"
#include "desk/shell/focus-later.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

struct _LbFactGroup
{
  AdwExpanderRow parent_instance;

  LbFactField *rows[LB_N_FACTS]; /* NULL for those chosen from a list, and before the first look */
  GtkDropDown *shape_drop;
  GtkDropDown *bar_drop;
  GtkDropDown *removal_drop;
  gboolean is_filling; /* a choice that changes is not a person's */
  LbJob *job;
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbFactGroup, lb_fact_group, ADW_TYPE_EXPANDER_ROW)

static const LbPile *
pile_of (LbFactGroup *self)
{
  return &lb_job_get_fold (self->job)->piles[self->pile];
}

static void
record_choice (LbFactGroup *self, LbFact fact, const char *value)
{
  GError *error = NULL;

  if (!lb_fact_record (self->job, self->pile, fact, value, LB_UNITS_METRIC, &error))
    lb_say_error (GTK_WIDGET (self), _ ("That was not stored"), error);
}

/* The first of both lists is "not known"; the rest is the table. */
static guint
shape_place (const LbPile *pile)
{
  return lb_pile_says (pile, LB_FACT_SHAPE) ? (guint) pile->outline.shape + 1 : 0;
}

static void
shape_chosen_cb (LbFactGroup *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->shape_drop);

  if (!self->is_filling && self->job != NULL && chosen <= LB_N_SHAPES &&
      chosen != shape_place (pile_of (self)))
    record_choice (self, LB_FACT_SHAPE, chosen > 0 ? lb_shape_name ((LbShape) (chosen - 1)) : "");
}

static void
bar_chosen_cb (LbFactGroup *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->bar_drop);
  const LbBar *bar;
  gsize n;

  if (self->is_filling || self->job == NULL || chosen == GTK_INVALID_LIST_POSITION)
    return;
  bar = chosen > 0 ? &lb_bar_table (&n)[chosen - 1] : NULL;
  if (bar != pile_of (self)->bar)
    record_choice (self, LB_FACT_BAR, bar != NULL ? bar->name : "");
}

static void
removal_chosen_cb (LbFactGroup *self)
{
  const gboolean is_to_be_drawn = gtk_drop_down_get_selected (self->removal_drop) == 1;

  if (!self->is_filling && self->job != NULL && is_to_be_drawn != pile_of (self)->is_to_be_drawn)
    record_choice (self, LB_FACT_REMOVAL, lb_removal_name (is_to_be_drawn));
}

static GtkStringList *
list_removals (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  gtk_string_list_append (list, g_dgettext (GETTEXT_PACKAGE, lb_removal_name (FALSE)));
  gtk_string_list_append (list, g_dgettext (GETTEXT_PACKAGE, lb_removal_name (TRUE)));
  return list;
}

static GtkStringList *
list_shapes (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  gtk_string_list_append (list, C_ ("shape", "not known"));
  for (LbShape shape = LB_SHAPE_SQUARE; shape < LB_N_SHAPES; shape++)
    gtk_string_list_append (list, g_dgettext (GETTEXT_PACKAGE, lb_shape_name (shape)));
  return list;
}

static GtkStringList *
list_bars (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  gtk_string_list_append (list, C_ ("bar", "not known"));
  for (gsize i = 0; i < n; i++)
    gtk_string_list_append (list, bars[i].name);
  return list;
}

static GtkDropDown *
add_choice (LbFactGroup *self, LbFact fact, GtkStringList *list, GCallback chosen)
{
  const char *title = g_dgettext (GETTEXT_PACKAGE, lb_fact_title (fact));
  GtkExpression *text = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkWidget *drop = gtk_drop_down_new (G_LIST_MODEL (list), text);
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  gtk_widget_set_valign (drop, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), drop);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), drop);
  g_signal_connect_object (drop, "notify::selected", chosen, self, G_CONNECT_SWAPPED);
  adw_expander_row_add_row (ADW_EXPANDER_ROW (self), row);
  return GTK_DROP_DOWN (drop);
}

static void
add_rows (LbFactGroup *self)
{
  self->is_filling = TRUE;
  for (LbFact fact = LB_FACT_MARK; fact < LB_N_FACTS; fact++) {
    if (fact == LB_FACT_SHAPE) {
      self->shape_drop = add_choice (self, fact, list_shapes (), G_CALLBACK (shape_chosen_cb));
      continue;
    }
    if (fact == LB_FACT_BAR) {
      self->bar_drop = add_choice (self, fact, list_bars (), G_CALLBACK (bar_chosen_cb));
      gtk_drop_down_set_enable_search (self->bar_drop, TRUE);
      continue;
    }
    if (fact == LB_FACT_REMOVAL) {
      self->removal_drop = add_choice (self, fact, list_removals (),
                                       G_CALLBACK (removal_chosen_cb));
      continue;
    }
    self->rows[fact] = lb_fact_field_new (fact);
    adw_expander_row_add_row (ADW_EXPANDER_ROW (self), GTK_WIDGET (self->rows[fact]));
    adw_expander_row_add_row (ADW_EXPANDER_ROW (self),
                              lb_checked_row_get_note_row (LB_CHECKED_ROW (self->rows[fact])));
  }
  self->is_filling = FALSE;
}

static void
fill_rows (LbFactGroup *self)
{
  const LbPile *pile = pile_of (self);
  const gboolean can_record = !lb_job_is_read_only (self->job);
  gsize n;

  self->is_filling = TRUE;
  for (LbFact fact = LB_FACT_MARK; fact < LB_N_FACTS; fact++) {
    if (self->rows[fact] != NULL)
      lb_fact_field_show (self->rows[fact], self->job, self->pile);
  }
  gtk_drop_down_set_selected (self->shape_drop, shape_place (pile));
  gtk_drop_down_set_selected (self->bar_drop,
                              pile->bar != NULL ? (guint) (pile->bar - lb_bar_table (&n)) + 1 : 0);
  gtk_drop_down_set_selected (self->removal_drop, pile->is_to_be_drawn ? 1 : 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->shape_drop), can_record);
  gtk_widget_set_sensitive (GTK_WIDGET (self->removal_drop), can_record);
  gtk_widget_set_sensitive (GTK_WIDGET (self->bar_drop), can_record);
  self->is_filling = FALSE;
}

static void
expanded_cb (LbFactGroup *self)
{
  if (!adw_expander_row_get_expanded (ADW_EXPANDER_ROW (self)) || self->job == NULL)
    return;
  if (self->shape_drop == NULL)
    add_rows (self);
  fill_rows (self);
}

static void
lb_fact_group_unmap (GtkWidget *widget)
{
  lb_fact_group_commit (LB_FACT_GROUP (widget));
  GTK_WIDGET_CLASS (lb_fact_group_parent_class)->unmap (widget);
}

static void
lb_fact_group_dispose (GObject *object)
{
  g_clear_object (&LB_FACT_GROUP (object)->job);
  G_OBJECT_CLASS (lb_fact_group_parent_class)->dispose (object);
}

static void
lb_fact_group_class_init (LbFactGroupClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_fact_group_dispose;
  GTK_WIDGET_CLASS (klass)->unmap = lb_fact_group_unmap;
}

static void
lb_fact_group_init (LbFactGroup *self)
{
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ ("Facts"));
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
  g_signal_connect (self, "notify::expanded", G_CALLBACK (expanded_cb), NULL);
}

void
lb_fact_group_show (LbFactGroup *self, LbJob *job, guint pile)
{
  g_autoptr (GError) doubt = NULL;

  g_return_if_fail (LB_IS_FACT_GROUP (self));

  g_set_object (&self->job, job);
  self->pile = pile;
  if (job == NULL)
    return;
  if (lb_pile_check (pile_of (self), &doubt))
    adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (self), _ ("Size, bars, lean, elevations"));
  else
    adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (self), doubt->message);
  expanded_cb (self);
}

void
lb_fact_group_commit (LbFactGroup *self)
{
  g_return_if_fail (LB_IS_FACT_GROUP (self));

  for (LbFact fact = LB_FACT_MARK; fact < LB_N_FACTS; fact++) {
    if (self->rows[fact] != NULL)
      lb_checked_row_commit (LB_CHECKED_ROW (self->rows[fact]));
  }
}

void
lb_fact_group_ask (LbFactGroup *self, LbFact fact)
{
  GtkWidget *row;

  g_return_if_fail (LB_IS_FACT_GROUP (self));

  adw_expander_row_set_expanded (ADW_EXPANDER_ROW (self), TRUE);
  row = fact == LB_FACT_SHAPE     ? GTK_WIDGET (self->shape_drop)
        : fact == LB_FACT_BAR     ? GTK_WIDGET (self->bar_drop)
        : fact == LB_FACT_REMOVAL ? GTK_WIDGET (self->removal_drop)
                                  : GTK_WIDGET (self->rows[fact]);
  if (row != NULL)
    lb_focus_later (row);
}
