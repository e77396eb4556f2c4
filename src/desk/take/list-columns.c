/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/take/list-columns.h"

#include "desk/shell/plain-table.h"
#include "trade/pile.h"

#include <glib/gi18n-lib.h>

static const LbFact shown_facts[] = {
  LB_FACT_MARK,    LB_FACT_BENT,  LB_FACT_ROW, LB_FACT_X,       LB_FACT_Y,
  LB_FACT_SHAPE,   LB_FACT_WIDTH, LB_FACT_BAR, LB_FACT_N_BARS,  LB_FACT_BATTER,
  LB_FACT_BEARING, LB_FACT_HEAD,  LB_FACT_CUT, LB_FACT_MUDLINE, LB_FACT_TOE,
};

typedef struct
{
  GArray *piles;
  LbUnits units;
} Shown;

static char *
cell_text (guint row, guint column, gpointer data)
{
  const Shown *shown = data;

  return lb_pile_get (&g_array_index (shown->piles, LbPile, row), shown_facts[column],
                      shown->units);
}

static gboolean
is_number (LbFact fact)
{
  return lb_fact_quantity (fact) != LB_QUANTITY_COUNT || fact == LB_FACT_N_BARS;
}

void
lb_list_columns_show (GtkColumnView *view, GArray *piles, LbUnits units, guint most)
{
  LbPlainColumn columns[G_N_ELEMENTS (shown_facts)];
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);
  Shown shown = { .piles = piles, .units = units };

  for (gsize i = 0; i < G_N_ELEMENTS (shown_facts); i++) {
    const char *name = g_dgettext (GETTEXT_PACKAGE, lb_fact_title (shown_facts[i]));
    const char *unit = lb_quantity_unit (lb_fact_quantity (shown_facts[i]), units);

    g_ptr_array_add (titles,
                     *unit == '\0' ? g_strdup (name) : g_strdup_printf (_ ("%s (%s)"), name, unit));
    columns[i] = (LbPlainColumn){
      .title = g_ptr_array_index (titles, i),
      .is_number = is_number (shown_facts[i]),
      .min_chars = 7,
    };
  }

  lb_plain_table_set_columns (view, columns, G_N_ELEMENTS (columns));
  lb_plain_table_set_rows (view, MIN (piles->len, most), cell_text, &shown);
}
