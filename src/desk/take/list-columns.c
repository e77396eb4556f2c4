/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/take/list-columns.h"

#include <glib/gi18n-lib.h>

static const LbFact shown_facts[] = {
  LB_FACT_MARK,    LB_FACT_BENT,  LB_FACT_ROW, LB_FACT_X,       LB_FACT_Y,
  LB_FACT_SHAPE,   LB_FACT_WIDTH, LB_FACT_BAR, LB_FACT_N_BARS,  LB_FACT_BATTER,
  LB_FACT_BEARING, LB_FACT_HEAD,  LB_FACT_CUT, LB_FACT_MUDLINE, LB_FACT_TOE,
};

/* What a column's cells are made of; owned by its factory. */
typedef struct
{
  GArray *piles;
  LbUnits units;
  LbFact fact;
} Column;

static void
column_free (gpointer data, GClosure *closure)
{
  Column *column = data;

  g_array_unref (column->piles);
  g_free (column);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  GtkWidget *cell = gtk_inscription_new (NULL);
  const gboolean is_text = column->fact <= LB_FACT_NOTE;

  gtk_inscription_set_min_chars (GTK_INSCRIPTION (cell), is_text ? 5 : 8);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), is_text ? 0.0f : 1.0f);
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  GtkStringObject *row = gtk_list_item_get_item (item);
  const guint64 i = g_ascii_strtoull (gtk_string_object_get_string (row), NULL, 10);
  const LbPile *pile = &g_array_index (column->piles, LbPile, i);
  g_autofree char *text = lb_pile_get (pile, column->fact, column->units);

  gtk_inscription_set_text (GTK_INSCRIPTION (gtk_list_item_get_child (item)), text);
}

static void
append_column (GtkColumnView *view, GArray *piles, LbUnits units, LbFact fact)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Column *column = g_new (Column, 1);
  const char *name = g_dgettext (GETTEXT_PACKAGE, lb_fact_title (fact));
  const char *unit = lb_quantity_unit (lb_fact_quantity (fact), units);
  g_autofree char *title = *unit == '\0' ? g_strdup (name)
                                         : g_strdup_printf (_ ("%s (%s)"), name, unit);

  *column = (Column){ .piles = g_array_ref (piles), .units = units, .fact = fact };
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cb), column, column_free, 0);

  g_autoptr (GtkColumnViewColumn) new_column = gtk_column_view_column_new (title, factory);
  gtk_column_view_append_column (view, new_column);
}

void
lb_list_columns_show (GtkColumnView *view, GArray *piles, LbUnits units, guint most)
{
  g_autoptr (GtkStringList) rows = gtk_string_list_new (NULL);
  GListModel *columns = gtk_column_view_get_columns (view);

  gtk_column_view_set_model (view, NULL);
  while (g_list_model_get_n_items (columns) > 0) {
    g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, 0);
    gtk_column_view_remove_column (view, column);
  }

  for (gsize i = 0; i < G_N_ELEMENTS (shown_facts); i++)
    append_column (view, piles, units, shown_facts[i]);
  for (guint i = 0; i < MIN (piles->len, most); i++) {
    g_autofree char *index = g_strdup_printf ("%u", i);
    gtk_string_list_append (rows, index);
  }

  g_autoptr (GtkNoSelection) model = gtk_no_selection_new (G_LIST_MODEL (g_steal_pointer (&rows)));
  gtk_column_view_set_model (view, GTK_SELECTION_MODEL (model));
}
