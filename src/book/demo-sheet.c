/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-sheet.h"

#include <math.h>

#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)

/* A truck comes when less than that is aboard. */
#define RODS_LEAST      100
#define CYLINDERS_LEAST 6
#define RODS_COME       250
#define CYLINDERS_COME  12

/* Shifts between two counts. */
#define COUNTED_EVERY 4

/* In the last one nobody had a thermometer, so that the sheet has a gap to name. */
#define LAST_SHIFT 29

static LbDraft
draft_of (const LbDraft *like, LbEntryKind kind, const char *what, const char *note)
{
  LbDraft draft = *like;

  draft.kind = kind;
  draft.what = what;
  draft.note = note;
  return draft;
}

gboolean
lb_demo_record_conditions (LbBook *book,
                           const LbDraft *like,
                           int shift,
                           const LbDemoWeather *weather,
                           GError **error)
{
  /* By weeks, as the summer goes on. */
  static const char *const warmths[] = { "56 °F", "57 °F", "58 °F", "60 °F", "61 °F" };
  static const char *const tides[] = { "low at noon", "+3 ft, rising", "high at noon",
                                       "+2 ft, falling" };
  const char *const said[][2] = {
    { "wind", weather->wind },
    { "sea", weather->sea },
    { "current", weather->current },
    { "visibility", weather->visibility },
    { "tide", tides[shift % (int) G_N_ELEMENTS (tides)] },
    { "water temperature", warmths[shift / 6 % (int) G_N_ELEMENTS (warmths)] },
  };
  const gsize n = G_N_ELEMENTS (said) - (shift == LAST_SHIFT ? 1 : 0);
  LbDraft drafts[G_N_ELEMENTS (said)];

  for (gsize i = 0; i < n; i++)
    drafts[i] = draft_of (like, LB_ENTRY_CONDITION, said[i][0], said[i][1]);
  return lb_book_record (book, drafts, n, NULL, error);
}

gboolean
lb_demo_record_crew (LbBook *book, const LbDraft *like, GError **error)
{
  static const char *const crew[][2] = {
    { LB_CHARGE_SUPERVISOR, "supervisor" }, { LB_CHARGE_IN_CHARGE, "superintendent" },
    { LB_CHARGE_CRANE, "operator" },        { LB_CHARGE_TENDERS, "tenders 1 and 2" },
    { LB_CHARGE_STANDBY, "diver 3" },
  };
  LbDraft drafts[G_N_ELEMENTS (crew)];

  for (gsize i = 0; i < G_N_ELEMENTS (crew); i++)
    drafts[i] = draft_of (like, LB_ENTRY_CREW, crew[i][0], crew[i][1]);
  return lb_book_record (book, drafts, G_N_ELEMENTS (drafts), NULL, error);
}

static const char *
or_none (const char *text)
{
  return *text != '\0' ? text : NULL;
}

gboolean
lb_demo_record_event (LbBook *book, const LbDraft *like, const LbDemoEvent *event, GError **error)
{
  LbDraft drafts[2];
  gsize n = 1;

  drafts[0] = draft_of (like, event->kind, or_none (event->what), or_none (event->note));
  if (event->kind != LB_ENTRY_NOTE)
    drafts[0].amount = event->minutes * 60.0;
  if (event->more != NULL)
    drafts[n++] = draft_of (like, LB_ENTRY_DETAIL,
                            event->kind == LB_ENTRY_DELAY ? LB_DETAIL_BORNE_BY : LB_DETAIL_DONE,
                            event->more);
  return lb_book_record (book, drafts, n, NULL, error);
}

static gboolean
record_hours (LbBook *book, const LbDraft *like, gint64 opened_us, GError **error)
{
  LbDraft draft = draft_of (like, LB_ENTRY_HOURS, NULL, NULL);

  draft.start_us = opened_us;
  draft.end_us = opened_us + LB_DEMO_SHIFT_MIN * MINUTE_US;
  return lb_book_record (book, &draft, 1, NULL, error);
}

static gboolean
record_number (LbBook *book,
               const LbDraft *like,
               LbEntryKind kind,
               const char *what,
               double number,
               GError **error)
{
  LbDraft draft = draft_of (like, kind, what, NULL);

  draft.amount = number;
  return lb_book_record (book, &draft, 1, NULL, error);
}

static gboolean
fill_up (LbBook *book, const LbDraft *like, LbDemoStore *store, GError **error)
{
  if (store->rods < RODS_LEAST) {
    store->rods += RODS_COME;
    if (!record_number (book, like, LB_ENTRY_DELIVERY, LB_STOCK_RODS, RODS_COME, error))
      return FALSE;
  }
  if (store->cylinders < CYLINDERS_LEAST) {
    store->cylinders += CYLINDERS_COME;
    return record_number (book, like, LB_ENTRY_DELIVERY, LB_STOCK_CYLINDERS, CYLINDERS_COME, error);
  }
  return TRUE;
}

gboolean
lb_demo_record_end (LbBook *book,
                    const LbDraft *like,
                    int shift,
                    gint64 opened_us,
                    LbDemoStore *store,
                    GError **error)
{
  if (!record_hours (book, like, opened_us, error) || !fill_up (book, like, store, error))
    return FALSE;
  return shift % COUNTED_EVERY != 0 ||
         (record_number (book, like, LB_ENTRY_STOCK, LB_STOCK_RODS, store->rods, error) &&
          record_number (book, like, LB_ENTRY_STOCK, LB_STOCK_CYLINDERS, floor (store->cylinders),
                         error));
}
