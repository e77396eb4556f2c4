/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of piles.
 *
 * Rows hold a pile's index and nothing else: cells ask the fold as they come into view. When the
 * job changes, the cells in view are written again in place, so that neither the place in the
 * list nor the focus is lost; rows are only made anew when there are more piles.
 *
 * The list's selection and the shared one follow each other; is_following stops the echo.
 */
#include "desk/plan/pile-table.h"

#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

#define LB_TYPE_PILE_ROW (lb_pile_row_get_type ())
G_DECLARE_FINAL_TYPE (LbPileRow, lb_pile_row, LB, PILE_ROW, GObject)

struct _LbPileRow
{
  GObject parent_instance;

  guint pile;
};

G_DEFINE_FINAL_TYPE (LbPileRow, lb_pile_row, G_TYPE_OBJECT)

static void
lb_pile_row_class_init (LbPileRowClass *klass)
{
}

static void
lb_pile_row_init (LbPileRow *self)
{
}

typedef enum {
  COLUMN_MARK,
  COLUMN_STATE,
  COLUMN_FACTS,
  COLUMN_WRONG,
} Column;

#define N_COLUMNS (COLUMN_WRONG + 1)

struct _LbPileTable
{
  GtkWidget parent_instance;

  GtkWidget *scroller;
  GtkWidget *view;
  GListStore *rows;
  GtkCustomFilter *filter;
  GtkMultiSelection *picked;
  GPtrArray *bound[N_COLUMNS]; /* GtkListItem in view */
  LbJob *job;
  GSignalGroup *job_signals;
  LbSelection *selection;
  GSignalGroup *selection_signals;
  LbStepSet shown_steps;
  gboolean is_following;
};

G_DEFINE_FINAL_TYPE (LbPileTable, lb_pile_table, GTK_TYPE_WIDGET)

enum {
  ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static char *
flags_text (guint flags)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint bit = 1; bit <= flags; bit <<= 1) {
    if (!(flags & bit))
      continue;
    if (text->len > 0)
      g_string_append_c (text, ' ');
    g_string_append (text, g_dgettext (GETTEXT_PACKAGE, lb_pile_flag_words ((LbPileFlag) bit)));
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
cell_text (LbPileTable *self, guint pile, Column column)
{
  const LbFold *fold = lb_job_get_fold (self->job);

  switch (column) {
  case COLUMN_MARK:
    return g_strdup (fold->piles[pile].mark);
  case COLUMN_STATE:
    return lb_pile_state_text (&fold->piles[pile], &fold->states[pile]);
  case COLUMN_FACTS:
    return lb_pile_text (lb_job_get_voice (self->job), &fold->piles[pile]);
  case COLUMN_WRONG:
    return flags_text (fold->states[pile].flags);
  default:
    g_return_val_if_reached (NULL);
  }
}

static void
write_cell (LbPileTable *self, GtkListItem *item, Column column)
{
  const LbPileRow *row = gtk_list_item_get_item (item);
  g_autofree char *text = self->job != NULL && row != NULL ? cell_text (self, row->pile, column)
                                                           : NULL;

  gtk_inscription_set_text (GTK_INSCRIPTION (gtk_list_item_get_child (item)), text);
}

static Column
column_of (GtkSignalListItemFactory *factory)
{
  return (Column) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
}

static void
setup_cb (LbPileTable *self, GtkListItem *item, GtkSignalListItemFactory *factory)
{
  static const guint MIN_CHARS[N_COLUMNS] = { 7, 22, 34, 20 };
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_min_chars (GTK_INSCRIPTION (cell), MIN_CHARS[column_of (factory)]);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell),
                                     GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (LbPileTable *self, GtkListItem *item, GtkSignalListItemFactory *factory)
{
  g_ptr_array_add (self->bound[column_of (factory)], item);
  write_cell (self, item, column_of (factory));
}

static void
unbind_cb (LbPileTable *self, GtkListItem *item, GtkSignalListItemFactory *factory)
{
  g_ptr_array_remove_fast (self->bound[column_of (factory)], item);
}

static void
add_columns (LbPileTable *self)
{
  static const char *const TITLES[N_COLUMNS] = {
    [COLUMN_MARK] = N_ ("Pile"),
    [COLUMN_STATE] = N_ ("Step"),
    [COLUMN_FACTS] = N_ ("What it is"),
    [COLUMN_WRONG] = N_ ("To put right"),
  };

  for (int i = 0; i < N_COLUMNS; i++) {
    GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
    g_autoptr (GtkColumnViewColumn) column = NULL;

    self->bound[i] = g_ptr_array_new ();
    g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER (i));
    g_signal_connect_swapped (factory, "setup", G_CALLBACK (setup_cb), self);
    g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), self);
    g_signal_connect_swapped (factory, "unbind", G_CALLBACK (unbind_cb), self);
    column = gtk_column_view_column_new (_ (TITLES[i]), factory);
    gtk_column_view_column_set_resizable (column, TRUE);
    gtk_column_view_column_set_expand (column, i == COLUMN_WRONG);
    gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), column);
  }
}

static gboolean
is_shown_cb (gpointer item, gpointer data)
{
  LbPileTable *self = LB_PILE_TABLE (data);
  const LbFold *fold = self->job != NULL ? lb_job_get_fold (self->job) : NULL;
  const guint pile = LB_PILE_ROW (item)->pile;

  return self->shown_steps == 0 || fold == NULL || pile >= fold->n_piles ||
         (self->shown_steps & LB_STEP_BIT (fold->states[pile].step)) != 0;
}

static guint
pile_at (LbPileTable *self, guint position)
{
  g_autoptr (LbPileRow) row = g_list_model_get_item (G_LIST_MODEL (self->picked), position);

  return row->pile;
}

/* From the shared selection into the list. */
static void
follow_selection (LbPileTable *self)
{
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (self->picked));
  g_autoptr (GtkBitset) picked = gtk_bitset_new_empty ();
  g_autoptr (GtkBitset) all = gtk_bitset_new_range (0, n);
  int current = -1;

  if (self->is_following || self->selection == NULL)
    return;
  for (guint i = 0; i < n; i++) {
    if (lb_selection_has (self->selection, pile_at (self, i)))
      gtk_bitset_add (picked, i);
    if ((int) pile_at (self, i) == lb_selection_get_current (self->selection))
      current = (int) i;
  }
  self->is_following = TRUE;
  gtk_selection_model_set_selection (GTK_SELECTION_MODEL (self->picked), picked, all);
  self->is_following = FALSE;
  /* The list itself is the column view's last child in this version of GTK. */
  if (current >= 0)
    gtk_widget_activate_action (gtk_widget_get_last_child (self->view), "list.scroll-to-item", "u",
                                (guint) current);
}

/* From the list into the shared selection. */
static void
list_picked_cb (LbPileTable *self)
{
  g_autoptr (GtkBitset) picked = NULL;
  g_autoptr (GArray) piles = NULL;
  GtkBitsetIter iter;
  guint position;

  if (self->is_following || self->selection == NULL)
    return;
  picked = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->picked));
  piles = g_array_new (FALSE, FALSE, sizeof (guint));
  if (gtk_bitset_iter_init_first (&iter, picked, &position)) {
    do {
      const guint pile = pile_at (self, position);

      g_array_append_val (piles, pile);
    } while (gtk_bitset_iter_next (&iter, &position));
  }
  self->is_following = TRUE;
  lb_selection_set_piles (self->selection, (const guint *) (gpointer) piles->data, piles->len);
  self->is_following = FALSE;
}

static void
make_rows (LbPileTable *self, guint n)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < n; i++) {
    LbPileRow *row = g_object_new (LB_TYPE_PILE_ROW, NULL);

    row->pile = i;
    g_ptr_array_add (rows, row);
  }
  self->is_following = TRUE;
  g_list_store_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)),
                       rows->pdata, rows->len);
  self->is_following = FALSE;
}

static void
job_changed_cb (LbPileTable *self)
{
  const guint n = lb_job_get_fold (self->job)->n_piles;

  if (n != g_list_model_get_n_items (G_LIST_MODEL (self->rows)))
    make_rows (self, n);
  else
    for (int column = 0; column < N_COLUMNS; column++)
      for (guint i = 0; i < self->bound[column]->len; i++)
        write_cell (self, g_ptr_array_index (self->bound[column], i), (Column) column);
  if (self->shown_steps != 0)
    gtk_filter_changed (GTK_FILTER (self->filter), GTK_FILTER_CHANGE_DIFFERENT);
  follow_selection (self);
}

static void
row_activated_cb (LbPileTable *self, guint position)
{
  g_signal_emit (self, signals[ACTIVATED], 0, (int) pile_at (self, position));
}

static void
lb_pile_table_dispose (GObject *object)
{
  LbPileTable *self = LB_PILE_TABLE (object);

  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  if (self->selection_signals != NULL)
    g_signal_group_set_target (self->selection_signals, NULL);
  g_clear_object (&self->job_signals);
  g_clear_object (&self->selection_signals);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_object (&self->picked);
  g_clear_object (&self->job);
  g_clear_object (&self->selection);
  G_OBJECT_CLASS (lb_pile_table_parent_class)->dispose (object);
}

static void
lb_pile_table_finalize (GObject *object)
{
  LbPileTable *self = LB_PILE_TABLE (object);

  for (int i = 0; i < N_COLUMNS; i++)
    g_ptr_array_unref (self->bound[i]);
  G_OBJECT_CLASS (lb_pile_table_parent_class)->finalize (object);
}

static void
lb_pile_table_class_init (LbPileTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_table_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pile_table_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);

  signals[ACTIVATED] = g_signal_new ("activated", LB_TYPE_PILE_TABLE, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
lb_pile_table_init (LbPileTable *self)
{
  GtkFilterListModel *shown;

  self->rows = g_list_store_new (LB_TYPE_PILE_ROW);
  self->filter = gtk_custom_filter_new (is_shown_cb, self, NULL);
  shown = gtk_filter_list_model_new (G_LIST_MODEL (self->rows), GTK_FILTER (self->filter));
  self->picked = gtk_multi_selection_new (G_LIST_MODEL (shown));
  g_signal_connect_object (self->picked, "selection-changed", G_CALLBACK (list_picked_cb), self,
                           G_CONNECT_SWAPPED);

  self->view = gtk_column_view_new (NULL);
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), GTK_SELECTION_MODEL (self->picked));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Piles"), -1);
  add_columns (self);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (row_activated_cb), self);

  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->view);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));

  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (job_changed_cb), self);
  self->selection_signals = g_signal_group_new (LB_TYPE_SELECTION);
  g_signal_group_connect_swapped (self->selection_signals, "changed", G_CALLBACK (follow_selection),
                                  self);
}

void
lb_pile_table_set_job (LbPileTable *self, LbJob *job)
{
  g_return_if_fail (LB_IS_PILE_TABLE (self));

  if (!g_set_object (&self->job, job))
    return;
  g_signal_group_set_target (self->job_signals, job);
  make_rows (self, job != NULL ? lb_job_get_fold (job)->n_piles : 0);
  follow_selection (self);
}

void
lb_pile_table_set_selection (LbPileTable *self, LbSelection *selection)
{
  g_return_if_fail (LB_IS_PILE_TABLE (self));

  g_set_object (&self->selection, selection);
  g_signal_group_set_target (self->selection_signals, selection);
  follow_selection (self);
}

void
lb_pile_table_set_shown (LbPileTable *self, LbStepSet steps)
{
  g_return_if_fail (LB_IS_PILE_TABLE (self));

  self->shown_steps = steps;
  self->is_following = TRUE;
  gtk_filter_changed (GTK_FILTER (self->filter), GTK_FILTER_CHANGE_DIFFERENT);
  self->is_following = FALSE;
  follow_selection (self);
}
