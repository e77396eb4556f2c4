/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample-job.h"

#include <math.h>

#define FOOT 0.3048
#define INCH 0.0254

gint64
sample_time_us (guint day, guint hour, guint minute)
{
  GDate epoch;
  g_date_clear (&epoch, 1);
  g_date_set_dmy (&epoch, 1, G_DATE_JANUARY, 1970);
  const gint64 days = (gint64) sample_job_first_day () + day - g_date_get_julian (&epoch);
  return ((days * 24 + hour) * 60 + minute) * 60 * G_USEC_PER_SEC;
}

guint32
sample_job_first_day (void)
{
  GDate first;
  g_date_clear (&first, 1);
  g_date_set_dmy (&first, 14, G_DATE_JULY, 2026);
  return g_date_get_julian (&first);
}

guint
sample_job_add_pile (LbLedger *ledger, const char *mark)
{
  LbPile pile;
  lb_pile_init (&pile);
  pile.unsaid = 0;
  pile.mark = lb_text_pool_add (ledger->strings, mark);
  pile.id = pile.mark;
  g_array_append_val (ledger->piles, pile);
  return ledger->piles->len - 1;
}

LbPile
sample_known_pile (void)
{
  LbPile pile;
  lb_pile_init (&pile);
  pile.unsaid = 0;
  pile.mark = "G7";
  pile.outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 16 * INCH };
  pile.bar = lb_bar_find ("#8");
  pile.n_bars = 8;
  pile.batter = 0.25;
  pile.bearing_rad = G_PI;
  pile.head_m = 10 * FOOT;
  pile.cut_m = -31 * FOOT;
  pile.mudline_m = -32 * FOOT;
  pile.toe_m = -60 * FOOT;
  return pile;
}

int
sample_job_add_shift (LbLedger *ledger, guint32 day)
{
  const LbShift shift = { .id = "shift", .day = day, .watch = "day", .who = "superintendent" };
  g_array_append_val (ledger->shifts, shift);
  return (int) ledger->shifts->len - 1;
}

const char *
sample_job_add (LbLedger *ledger, const LbEntry *entry)
{
  LbEntry own = *entry;
  g_autofree char *id = g_strdup_printf ("e%06u", ledger->entries->len + 1);
  own.seq = ledger->last_seq = ledger->entries->len + 1;
  own.id = own.act = lb_text_pool_add (ledger->strings, id);
  own.at_us = own.seq;
  own.who = own.who != NULL ? own.who : "";
  own.what = own.what != NULL ? own.what : "";
  own.note = own.note != NULL ? own.note : "";
  own.of = own.of != NULL ? own.of : "";
  g_array_append_val (ledger->entries, own);
  return own.act;
}

static void
add_setting (LbLedger *ledger, const char *key, const char *value)
{
  const LbEntry entry = {
    SAMPLE_ENTRY (LB_ENTRY_SETTING, -1),
    .what = key,
    .note = value,
  };
  sample_job_add (ledger, &entry);
}

static void
add_piles (LbLedger *ledger)
{
  for (guint bent = 0; bent < SAMPLE_N_BENTS; bent++) {
    for (guint row = 0; row < SAMPLE_N_ROWS; row++) {
      g_autofree char *mark = g_strdup_printf ("%c%u", 'A' + (int) row, bent + 1);
      g_autofree char *bent_name = g_strdup_printf ("%u", bent + 1);
      g_autofree char *row_name = g_strdup_printf ("%c", 'A' + (int) row);
      const guint i = sample_job_add_pile (ledger, mark);
      LbPile *const pile = &g_array_index (ledger->piles, LbPile, i);
      pile->bent = lb_text_pool_add (ledger->strings, bent_name);
      pile->row = lb_text_pool_add (ledger->strings, row_name);
      pile->x_m = 12 * FOOT * bent;
      pile->y_m = -9 * FOOT * row;
      pile->outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 16 * INCH };
      pile->bar = lb_bar_find ("#8");
      pile->n_bars = 8;
      pile->head_m = 10 * FOOT;
      pile->mudline_m = -(28 + (double) row) * FOOT;
      pile->toe_m = pile->mudline_m - 25 * FOOT;
      /* The outer rows lean outwards, as they do under a wharf. */
      if (row == 0 || row + 1 == SAMPLE_N_ROWS) {
        pile->batter = 1.0 / 6;
        pile->bearing_rad = row == 0 ? 0 : G_PI;
      }
    }
  }
}

static void
add_step (LbLedger *ledger, int shift, guint pile, const char *step)
{
  if (pile >= ledger->piles->len)
    return;
  const LbEntry entry = {
    SAMPLE_ENTRY (LB_ENTRY_STEP, shift),
    .what = step,
  };
  LbEntry at = entry;
  at.pile = (int) pile;
  sample_job_add (ledger, &at);
}

static void
add_bars (LbLedger *ledger, int shift, guint pile, LbBarSet bars)
{
  if (pile >= ledger->piles->len)
    return;
  LbEntry entry = {
    SAMPLE_ENTRY (LB_ENTRY_BARS, shift),
    .bars = bars,
  };
  entry.pile = (int) pile;
  sample_job_add (ledger, &entry);
}

static void
add_burn_time (LbLedger *ledger, int shift, guint pile)
{
  LbEntry entry = {
    SAMPLE_ENTRY (LB_ENTRY_BURN_TIME, shift),
    .amount = 9 * 60,
  };
  entry.pile = (int) pile;
  sample_job_add (ledger, &entry);
}

/* A crew that gets faster: two piles a day, every fifth day three, a bar or two more left over. */
static void
add_work (LbLedger *ledger, int shift, guint day, guint *next)
{
  const guint n = day % 5 == 4 ? 3 : 2;
  for (guint i = 0; i < n; i++) {
    const guint pile = *next + i;
    add_step (ledger, shift, pile, "cleaned");
    add_bars (ledger, shift, pile, lb_bar_set_all (8));
    if (pile < ledger->piles->len)
      add_burn_time (ledger, shift, pile);
    add_step (ledger, shift, pile, "severed");
    if (day % 7 != 3)
      add_step (ledger, shift, pile, "rigged");
    if (day % 7 != 3)
      add_step (ledger, shift, pile, "pulled");
  }
  *next += n;
  add_step (ledger, shift, *next, "cleaned");
  add_bars (ledger, shift, *next, LB_BAR (0) | LB_BAR (7) | LB_BAR (1));
}

static void
add_gear (LbLedger *ledger, int shift, guint day)
{
  const LbEntry entries[] = {
    { SAMPLE_ENTRY (LB_ENTRY_RODS, shift), .amount = 22 + day % 4 },
    { SAMPLE_ENTRY (LB_ENTRY_OXYGEN, shift), .amount = 12.5 },
    { SAMPLE_ENTRY (LB_ENTRY_DIVE, shift), .what = "diver 1", .amount = 31 * FOOT,
      .start_us = sample_time_us (day, 7, 10), .end_us = sample_time_us (day, 8, 32),
      .up_us = sample_time_us (day, 8, 34) },
    { SAMPLE_ENTRY (LB_ENTRY_DIVE, shift), .what = "diver 2", .amount = 44 * FOOT,
      .start_us = sample_time_us (day, 9, 5), .end_us = sample_time_us (day, 11, 20),
      .up_us = sample_time_us (day, 11, 22) },
    { SAMPLE_ENTRY (LB_ENTRY_DELAY, shift), .what = "current", .amount = 45 * 60,
      .note = "waited for slack" },
    { SAMPLE_ENTRY (LB_ENTRY_FAULT, shift), .what = "collet", .amount = 10 * 60,
      .note = "leak at the O-ring, changed" },
    { SAMPLE_ENTRY (LB_ENTRY_CONDITION, shift), .what = "wind",
      .note = "12 kn from the south-west" },
    { SAMPLE_ENTRY (LB_ENTRY_NOTE, shift), .note = "Barge moved to the next bent at noon." },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    sample_job_add (ledger, &entries[i]);
}

LbLedger *
sample_job_new (guint n_days)
{
  LbLedger *const ledger = lb_ledger_new ();
  guint next = 0;
  guint worked = 0;
  add_piles (ledger);
  add_setting (ledger, "name", "Sample Wharf");
  add_setting (ledger, "datum", "MLLW");
  for (guint day = 0; worked < n_days; day++) {
    GDate date;
    g_date_clear (&date, 1);
    g_date_set_julian (&date, sample_job_first_day () + day);
    if (g_date_get_weekday (&date) == G_DATE_SUNDAY)
      continue;
    const int shift = sample_job_add_shift (ledger, sample_job_first_day () + day);
    add_work (ledger, shift, worked, &next);
    add_gear (ledger, shift, day);
    worked++;
  }
  return ledger;
}
