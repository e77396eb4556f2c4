/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/plain-table.h"

#include "desk/shell/changed-span.h"

/* Between the cells of a row told as one text; stands in no text that a person reads. */
#define CELL_END "\037"

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const LbPlainColumn *column = data;
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_min_chars (GTK_INSCRIPTION (cell), (guint) column->min_chars);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (cell), (guint) column->min_chars);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), column->is_number ? 1.0f : 0.0f);
  if (column->is_number)
    gtk_widget_add_css_class (cell, "numeric");
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const guint index = GPOINTER_TO_UINT (data);
  GtkStringObject *row = gtk_list_item_get_item (item);
  g_auto (GStrv) cells = g_strsplit (gtk_string_object_get_string (row), CELL_END, -1);

  gtk_inscription_set_text (GTK_INSCRIPTION (gtk_list_item_get_child (item)),
                            index < g_strv_length (cells) ? cells[index] : "");
}

static void
free_column (gpointer data, GClosure *closure)
{
  g_free (data);
}

static void
append_column (GtkColumnView *view, guint index, const LbPlainColumn *description)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  LbPlainColumn *own = g_memdup2 (description, sizeof *description);

  own->title = NULL; /* the column has its own copy */
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cb), own, free_column, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GUINT_TO_POINTER (index));

  g_autoptr (GtkColumnViewColumn) added = gtk_column_view_column_new (description->title, factory);
  gtk_column_view_column_set_expand (added, description->is_wide);
  gtk_column_view_append_column (view, added);
}

/* Headings stand at the left; GTK 4.8 has no property for it, so those over numbers are moved by
 * their widgets: the view's first child is the row of headings. */
static void
align_headings (GtkColumnView *view, const LbPlainColumn *columns, guint n_columns)
{
  GtkWidget *heading = gtk_widget_get_first_child (gtk_widget_get_first_child (GTK_WIDGET (view)));

  for (guint i = 0; i < n_columns && heading != NULL; i++) {
    GtkWidget *inner = gtk_widget_get_first_child (heading);

    if (columns[i].is_number && inner != NULL)
      gtk_widget_set_halign (inner, GTK_ALIGN_END);
    heading = gtk_widget_get_next_sibling (heading);
  }
}

static gboolean
has_columns (GtkColumnView *view, const LbPlainColumn *columns, guint n_columns)
{
  GListModel *shown = gtk_column_view_get_columns (view);

  if (g_list_model_get_n_items (shown) != n_columns)
    return FALSE;
  for (guint i = 0; i < n_columns; i++) {
    g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (shown, i);

    if (g_strcmp0 (gtk_column_view_column_get_title (column), columns[i].title) != 0)
      return FALSE;
  }

  return TRUE;
}

void
lb_plain_table_set_columns (GtkColumnView *view, const LbPlainColumn *columns, guint n_columns)
{
  GListModel *shown = gtk_column_view_get_columns (view);

  g_return_if_fail (GTK_IS_COLUMN_VIEW (view));

  if (has_columns (view, columns, n_columns))
    return;
  gtk_column_view_set_model (view, NULL);
  while (g_list_model_get_n_items (shown) > 0) {
    g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (shown, 0);
    gtk_column_view_remove_column (view, column);
  }
  for (guint i = 0; i < n_columns; i++)
    append_column (view, i, &columns[i]);
  align_headings (view, columns, n_columns);
}

static GtkStringList *
rows_of (GtkColumnView *view)
{
  GtkSelectionModel *model = gtk_column_view_get_model (view);

  if (model == NULL) {
    g_autoptr (GtkNoSelection) none = gtk_no_selection_new (
      G_LIST_MODEL (gtk_string_list_new (NULL)));

    gtk_column_view_set_model (view, GTK_SELECTION_MODEL (none));
    model = gtk_column_view_get_model (view);
  }

  return GTK_STRING_LIST (GTK_IS_SINGLE_SELECTION (model)
                            ? gtk_single_selection_get_model (GTK_SINGLE_SELECTION (model))
                            : gtk_no_selection_get_model (GTK_NO_SELECTION (model)));
}

void
lb_plain_table_set_rows (GtkColumnView *view, guint n_rows, LbPlainCellFunc cell, gpointer data)
{
  const guint n_columns = g_list_model_get_n_items (gtk_column_view_get_columns (view));
  GtkStringList *rows = rows_of (view);
  g_autoptr (GPtrArray) before = g_ptr_array_new ();
  g_autoptr (GPtrArray) after = g_ptr_array_new_with_free_func (g_free);
  g_autofree const char **added = NULL;
  LbChangedSpan span;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (rows)); i++)
    g_ptr_array_add (before, (gpointer) gtk_string_list_get_string (rows, i));
  for (guint row = 0; row < n_rows; row++) {
    GString *text = g_string_new (NULL);

    for (guint column = 0; column < n_columns; column++) {
      g_autofree char *said = cell (row, column, data);

      g_string_append (text, column > 0 ? CELL_END : "");
      g_string_append (text, said);
    }
    g_ptr_array_add (after, g_string_free (text, FALSE));
  }

  span = lb_changed_span (before, after);
  added = g_new0 (const char *, span.n_new + 1);
  for (guint i = 0; i < span.n_new; i++)
    added[i] = g_ptr_array_index (after, span.at + i);
  gtk_string_list_splice (rows, span.at, span.n_old, added);
}

void
lb_plain_table_let_pick (GtkColumnView *view)
{
  GtkSingleSelection *rows;

  g_return_if_fail (GTK_IS_COLUMN_VIEW (view));

  if (GTK_IS_SINGLE_SELECTION (gtk_column_view_get_model (view)))
    return;
  rows = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (rows, FALSE);
  gtk_single_selection_set_can_unselect (rows, TRUE);
  gtk_single_selection_set_model (rows, G_LIST_MODEL (gtk_string_list_new (NULL)));
  gtk_column_view_set_model (view, GTK_SELECTION_MODEL (rows));
  g_object_unref (rows);
}

guint
lb_plain_table_get_picked (GtkColumnView *view)
{
  GtkSelectionModel *model;

  g_return_val_if_fail (GTK_IS_COLUMN_VIEW (view), GTK_INVALID_LIST_POSITION);

  model = gtk_column_view_get_model (view);
  return GTK_IS_SINGLE_SELECTION (model)
           ? gtk_single_selection_get_selected (GTK_SINGLE_SELECTION (model))
           : GTK_INVALID_LIST_POSITION;
}

void
lb_plain_table_pick (GtkColumnView *view, guint row)
{
  g_return_if_fail (GTK_IS_COLUMN_VIEW (view));
  g_return_if_fail (GTK_IS_SINGLE_SELECTION (gtk_column_view_get_model (view)));

  gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (gtk_column_view_get_model (view)), row);
}
