/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/plain-table.h"

/* One row of the model: only its number. */
#define LB_TYPE_PLAIN_ROW (lb_plain_row_get_type ())
G_DECLARE_FINAL_TYPE (LbPlainRow, lb_plain_row, LB, PLAIN_ROW, GObject)

struct _LbPlainRow
{
  GObject parent_instance;
  guint index;
};

G_DEFINE_FINAL_TYPE (LbPlainRow, lb_plain_row, G_TYPE_OBJECT)

static void
lb_plain_row_class_init (LbPlainRowClass *klass)
{
}

static void
lb_plain_row_init (LbPlainRow *self)
{
}

/* What all columns of one table share. */
typedef struct
{
  LbPlainCellFunc cell;
  gpointer data;
  GDestroyNotify free_data;
} Table;

static void
table_clear (gpointer data)
{
  Table *table = data;

  if (table->free_data != NULL)
    table->free_data (table->data);
}

typedef struct
{
  Table *table; /* counted */
  guint index;
  gboolean is_number;
  guint min_chars;
} Column;

static void
column_free (gpointer data, GClosure *closure)
{
  Column *column = data;

  g_rc_box_release_full (column->table, table_clear);
  g_free (column);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_min_chars (GTK_INSCRIPTION (cell), column->min_chars);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), column->is_number ? 1.0f : 0.0f);
  if (column->is_number)
    gtk_widget_add_css_class (cell, "numeric");
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  const LbPlainRow *row = gtk_list_item_get_item (item);
  g_autofree char *text = column->table->cell (row->index, column->index, column->table->data);

  gtk_inscription_set_text (GTK_INSCRIPTION (gtk_list_item_get_child (item)), text);
}

static void
append_column (GtkColumnView *view, Table *table, guint index, const LbPlainColumn *description)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Column *column = g_new (Column, 1);

  *column = (Column){
    .table = g_rc_box_acquire (table),
    .index = index,
    .is_number = description->is_number,
    .min_chars = (guint) description->min_chars,
  };
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cb), column, column_free, 0);

  g_autoptr (GtkColumnViewColumn) added = gtk_column_view_column_new (description->title, factory);
  gtk_column_view_append_column (view, added);
}

void
lb_plain_table_show (GtkColumnView *view,
                     const LbPlainColumn *columns,
                     guint n_columns,
                     guint n_rows,
                     LbPlainCellFunc cell,
                     gpointer data,
                     GDestroyNotify free_data)
{
  GListModel *old = gtk_column_view_get_columns (view);
  GListStore *rows = g_list_store_new (LB_TYPE_PLAIN_ROW);
  Table *table = g_rc_box_new (Table);

  *table = (Table){ .cell = cell, .data = data, .free_data = free_data };
  gtk_column_view_set_model (view, NULL);
  while (g_list_model_get_n_items (old) > 0) {
    g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (old, 0);
    gtk_column_view_remove_column (view, column);
  }

  for (guint i = 0; i < n_columns; i++)
    append_column (view, table, i, &columns[i]);
  g_rc_box_release_full (table, table_clear);

  for (guint i = 0; i < n_rows; i++) {
    g_autoptr (LbPlainRow) row = g_object_new (LB_TYPE_PLAIN_ROW, NULL);

    row->index = i;
    g_list_store_append (rows, row);
  }

  g_autoptr (GtkNoSelection) model = gtk_no_selection_new (G_LIST_MODEL (rows));
  gtk_column_view_set_model (view, GTK_SELECTION_MODEL (model));
}
