/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/production/day-table.h"

#include "desk/shell/plain-table.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

typedef enum {
  COLUMN_DAY,
  COLUMN_CLEANED,
  COLUMN_SEVERED,
  COLUMN_RIGGED,
  COLUMN_PULLED,
  COLUMN_BARS,
  COLUMN_RODS,
  COLUMN_OXYGEN,
  COLUMN_DIVES,
  COLUMN_BOTTOM,
  COLUMN_DELAYS,
  COLUMN_PULLED_SO_FAR,
} Column;

#define N_COLUMNS (COLUMN_PULLED_SO_FAR + 1)

static const char *const titles[N_COLUMNS] = {
  [COLUMN_DAY] = N_ ("Day"),         [COLUMN_CLEANED] = N_ ("Cleaned"),
  [COLUMN_SEVERED] = N_ ("Severed"), [COLUMN_RIGGED] = N_ ("Rigged"),
  [COLUMN_PULLED] = N_ ("Pulled"),   [COLUMN_BARS] = N_ ("Bars"),
  [COLUMN_RODS] = N_ ("Rods"),       [COLUMN_OXYGEN] = N_ ("Oxygen"),
  [COLUMN_DIVES] = N_ ("Dives"),     [COLUMN_BOTTOM] = N_ ("Bottom"),
  [COLUMN_DELAYS] = N_ ("Delays"),   [COLUMN_PULLED_SO_FAR] = N_ ("Out"),
};

/* What a column's numbers are of; the unit stands in its heading. */
static LbQuantity
quantity_of (Column column)
{
  if (column == COLUMN_OXYGEN)
    return LB_QUANTITY_GAS;

  return column == COLUMN_BOTTOM || column == COLUMN_DELAYS ? LB_QUANTITY_TIME : LB_QUANTITY_COUNT;
}

static char *
amount_text (const LbVoice *voice, LbQuantity quantity, double si)
{
  return lb_number_to_text (lb_quantity_from_si (quantity, voice->units, si),
                            lb_quantity_decimals (quantity, voice->units), &voice->numbers);
}

static char *
cell_text (guint row, guint column, gpointer data)
{
  LbJob *job = LB_JOB (data);
  const LbFold *fold = lb_job_get_fold (job);
  const LbVoice *voice = lb_job_get_voice (job);

  if (row >= fold->n_days)
    return g_strdup ("");

  const LbDay *day = &fold->days[fold->n_days - 1 - row];
  const LbTotals *totals = &day->totals;

  switch ((Column) column) {
  case COLUMN_DAY:
    return lb_day_text (day->day);
  case COLUMN_CLEANED:
    return lb_number_to_text (totals->steps[LB_STEP_CLEANED], 0, &voice->numbers);
  case COLUMN_SEVERED:
    return lb_number_to_text (totals->steps[LB_STEP_SEVERED], 0, &voice->numbers);
  case COLUMN_RIGGED:
    return lb_number_to_text (totals->steps[LB_STEP_RIGGED], 0, &voice->numbers);
  case COLUMN_PULLED:
    return lb_number_to_text (totals->steps[LB_STEP_PULLED], 0, &voice->numbers);
  case COLUMN_BARS:
    return lb_number_to_text (totals->bars, 0, &voice->numbers);
  case COLUMN_RODS:
    return lb_number_to_text (totals->rods, 0, &voice->numbers);
  case COLUMN_OXYGEN:
    return amount_text (voice, LB_QUANTITY_GAS, totals->oxygen_m3);
  case COLUMN_DIVES:
    return lb_number_to_text (totals->n_dives, 0, &voice->numbers);
  case COLUMN_BOTTOM:
    return amount_text (voice, LB_QUANTITY_TIME, totals->bottom_s);
  case COLUMN_DELAYS:
    return amount_text (voice, LB_QUANTITY_TIME, totals->delay_s + totals->fault_s);
  case COLUMN_PULLED_SO_FAR:
    return lb_number_to_text (day->pulled_so_far, 0, &voice->numbers);
  default:
    g_return_val_if_reached (NULL);
  }
}

void
lb_day_table_show (GtkColumnView *view, LbJob *job)
{
  const LbUnits units = lb_job_get_voice (job)->units;
  g_autoptr (GPtrArray) headings = g_ptr_array_new_with_free_func (g_free);
  LbPlainColumn columns[N_COLUMNS];

  for (guint i = 0; i < N_COLUMNS; i++) {
    const char *unit = lb_quantity_unit (quantity_of ((Column) i), units);

    g_ptr_array_add (headings, *unit == '\0'
                                 ? g_strdup (_ (titles[i]))
                                 /* Translators: a column's title, and its unit. */
                                 : g_strdup_printf (_ ("%s (%s)"), _ (titles[i]), unit));
    columns[i] = (LbPlainColumn){
      .title = g_ptr_array_index (headings, i),
      .is_number = i != COLUMN_DAY,
      .min_chars = i == COLUMN_DAY ? 15 : 5,
    };
  }
  lb_plain_table_set_columns (view, columns, N_COLUMNS);
  lb_plain_table_set_rows (view, (guint) lb_job_get_fold (job)->n_days, cell_text, job);
}
