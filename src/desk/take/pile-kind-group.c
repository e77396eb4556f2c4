/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/take/pile-kind-group.h"

#include <glib/gi18n-lib.h>

struct _LbPileKindGroup
{
  AdwPreferencesGroup parent_instance;

  /* Template widgets */
  AdwComboRow *shape_row;
  AdwEntryRow *width_row;
  AdwComboRow *bar_row;
  AdwEntryRow *n_bars_row;
  AdwEntryRow *batter_row;
  AdwEntryRow *head_row;
  AdwEntryRow *mudline_row;

  LbUnits units;
};

G_DEFINE_FINAL_TYPE (LbPileKindGroup, lb_pile_kind_group, ADW_TYPE_PREFERENCES_GROUP)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The facts set here are numbers and names from tables: no string of a pile needs keeping. */
static const char *
keep_nothing (gpointer pool, const char *text)
{
  return "";
}

static gboolean
read_row (LbPileKindGroup *self, AdwEntryRow *row, LbFact fact, LbPile *pile)
{
  g_autoptr (GError) error = NULL;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row));
  const gboolean is_read = lb_pile_set (pile, fact, text, self->units, keep_nothing, NULL, &error);

  if (is_read)
    gtk_widget_remove_css_class (GTK_WIDGET (row), "error");
  else
    gtk_widget_add_css_class (GTK_WIDGET (row), "error");
  gtk_widget_set_tooltip_text (GTK_WIDGET (row), is_read ? NULL : error->message);

  return is_read;
}

static void
title_row (LbPileKindGroup *self, AdwEntryRow *row, LbFact fact)
{
  g_autofree char *title = g_strdup_printf (
    /* Translators: a fact and the unit it is typed in: "Width (in)". */
    _ ("%s (%s)"), g_dgettext (GETTEXT_PACKAGE, lb_fact_title (fact)),
    lb_quantity_unit (lb_fact_quantity (fact), self->units));

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
}

static void
row_changed_cb (LbPileKindGroup *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
lb_pile_kind_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PILE_KIND_GROUP);

  G_OBJECT_CLASS (lb_pile_kind_group_parent_class)->dispose (object);
}

static void
lb_pile_kind_group_class_init (LbPileKindGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_kind_group_dispose;

  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-kind-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, bar_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, batter_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, head_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, mudline_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, n_bars_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, shape_row);
  gtk_widget_class_bind_template_child (widget_class, LbPileKindGroup, width_row);
  gtk_widget_class_bind_template_callback (widget_class, row_changed_cb);
}

static void
lb_pile_kind_group_init (LbPileKindGroup *self)
{
  g_autoptr (GtkStringList) shapes = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) bars = gtk_string_list_new (NULL);
  gsize n_bars;
  const LbBar *bar = lb_bar_table (&n_bars);

  gtk_widget_init_template (GTK_WIDGET (self));

  gtk_string_list_append (shapes, C_ ("shape", "not known"));
  for (int shape = 0; shape < LB_N_SHAPES; shape++)
    gtk_string_list_append (shapes, g_dgettext (GETTEXT_PACKAGE, lb_shape_name ((LbShape) shape)));
  gtk_string_list_append (bars, _ ("not known"));
  for (gsize i = 0; i < n_bars; i++)
    gtk_string_list_append (bars, bar[i].name);
  adw_combo_row_set_model (self->shape_row, G_LIST_MODEL (shapes));
  adw_combo_row_set_model (self->bar_row, G_LIST_MODEL (bars));

  lb_pile_kind_group_set_units (self, LB_UNITS_US);
}

void
lb_pile_kind_group_set_units (LbPileKindGroup *self, LbUnits units)
{
  g_return_if_fail (LB_IS_PILE_KIND_GROUP (self));

  self->units = units;
  title_row (self, self->width_row, LB_FACT_WIDTH);
  title_row (self, self->head_row, LB_FACT_HEAD);
  title_row (self, self->mudline_row, LB_FACT_MUDLINE);
}

gboolean
lb_pile_kind_group_get (LbPileKindGroup *self, LbPile *out_pile)
{
  const guint bar = adw_combo_row_get_selected (self->bar_row);
  const guint shape = adw_combo_row_get_selected (self->shape_row);
  LbPile pile;
  gboolean is_read = TRUE;

  g_return_val_if_fail (LB_IS_PILE_KIND_GROUP (self), FALSE);

  lb_pile_init (&pile);
  if (shape > 0 && shape <= LB_N_SHAPES)
    lb_pile_set (&pile, LB_FACT_SHAPE, lb_shape_name ((LbShape) (shape - 1)), self->units,
                 keep_nothing, NULL, NULL);
  pile.bar = bar > 0 && bar != GTK_INVALID_LIST_POSITION ? &lb_bar_table (NULL)[bar - 1] : NULL;
  is_read &= read_row (self, self->width_row, LB_FACT_WIDTH, &pile);
  is_read &= read_row (self, self->n_bars_row, LB_FACT_N_BARS, &pile);
  is_read &= read_row (self, self->batter_row, LB_FACT_BATTER, &pile);
  is_read &= read_row (self, self->head_row, LB_FACT_HEAD, &pile);
  is_read &= read_row (self, self->mudline_row, LB_FACT_MUDLINE, &pile);
  if (is_read)
    *out_pile = pile;

  return is_read;
}
