/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Thirty shifts of an invented crew, played through rule by rule.
 *
 * The crew works from the outer end back: it cleans ahead, burns what is clean, rigs, and pulls when
 * the crane is there. How many bars a shift burns rises with practice and falls with what it loses
 * to weather, current and gear; those losses stand in demo-events.c. Two divers make one dive
 * each, well inside the no-stop limit for these depths.
 *
 * Invariants:
 * 1. Only whole numbers decide, and only LbChance is asked, so that every machine tells the same
 *    history.
 * 2. A leaning pile is rigged before its last bars are burned, a plumb one after it is severed.
 * 3. The clock only goes on.
 */
#include "book/demo-shifts.h"

#include "book/demo-answers.h"
#include "book/demo-chance.h"
#include "book/demo-checks.h"
#include "book/demo-events.h"
#include "book/demo-sheet.h"
#include "trade/pile-bars.h"
#include "trade/shift-words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define N_SHIFTS  30
#define SEED      G_GUINT64_CONSTANT (20260608)
#define MINUTE_US (G_GINT64_CONSTANT (60) * G_USEC_PER_SEC)
#define DAY_US    (24 * 60 * MINUTE_US)
/* GDate's number of 1 January 1970. */
#define JULIAN_1970 719163
/* Bars left at which a leaning pile must hang on the hook. */
#define HOLD_BARS 2
/* From 0: the crew begins to tick its cards. */
#define FIRST_CHECKED_SHIFT 22

/* NIST SP 811, appendix B: exact. */
#define FOOT       0.3048
#define INCH       0.0254
#define CUBIC_FOOT (FOOT * FOOT * FOOT)

/* What a full cylinder gives before it is changed; near enough for a made-up crew. */
#define CYLINDER_CUBIC_FEET 230

#define WHO "superintendent"

/* What is known of a pile while the history is played. */
typedef struct
{
  LbBarSet left;
  gboolean is_clean, is_rigged, is_severed, is_out;
} Work;

typedef struct
{
  LbBook *book;
  const LbLedger *ledger;
  LbLedger *record; /* the same, and what is played */
  guint *order;     /* piles as the crew comes to them */
  Work *works;
  guint n_piles;
  LbChance chance;
  /* of the shift being played */
  int shift;
  char *shift_id;
  gint64 clock_us;
  double trigger_s;
  LbDemoStore store; /* of rods and cylinders, from shift to shift */
} Play;

/* --- Small steps -------------------------------------------------------------------------- */

static LbDraft
draft_of (Play *play, LbEntryKind kind, const LbPile *pile)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.shift_id = play->shift_id;
  draft.who = WHO;
  draft.at_us = play->clock_us;
  draft.pile_id = pile != NULL ? pile->id : NULL;
  return draft;
}

static void
pass_minutes (Play *play, int least, int most)
{
  play->clock_us += lb_chance_between (&play->chance, least, most) * MINUTE_US;
}

static gboolean
record_step (Play *play, guint i, LbStep step, char **out_act, GError **error)
{
  LbDraft draft = draft_of (play, LB_ENTRY_STEP, lb_ledger_pile (play->ledger, i));

  draft.what = lb_step_name (step);
  pass_minutes (play, 1, 4);
  return lb_book_record (play->book, &draft, 1, out_act, error);
}

/* Somebody touched the wrong thing and took it back at once. */
static gboolean
record_slip (Play *play, const LbDraft *wrong, GError **error)
{
  g_autofree char *act = NULL;
  LbDraft back = draft_of (play, LB_ENTRY_TAKE_BACK, NULL);

  if (!lb_book_record (play->book, wrong, 1, &act, error))
    return FALSE;
  pass_minutes (play, 1, 2);
  back.at_us = play->clock_us;
  back.of = act;
  return lb_book_record (play->book, &back, 1, NULL, error);
}

/* --- The shift ---------------------------------------------------------------------------- */

static int
minutes_lost (int shift)
{
  gsize n_events;
  const LbDemoEvent *events = lb_demo_events (&n_events);
  int lost = 0;

  for (gsize i = 0; i < n_events; i++)
    lost += events[i].shift == shift ? events[i].minutes : 0;

  return MIN (lost, LB_DEMO_SHIFT_MIN);
}

/* Bars a whole shift burns: six at first, near thirty in the end. */
static int
bars_in_whole_shift (int shift)
{
  return 38 - 32 * 10 / (10 + shift);
}

static int
bars_of_shift (Play *play)
{
  const int worked = LB_DEMO_SHIFT_MIN - minutes_lost (play->shift);

  return bars_in_whole_shift (play->shift) * worked / LB_DEMO_SHIFT_MIN *
         lb_chance_between (&play->chance, 85, 118) / 100;
}

static gboolean
record_events (Play *play, GError **error)
{
  gsize n_events;
  const LbDemoEvent *events = lb_demo_events (&n_events);

  for (gsize i = 0; i < n_events; i++) {
    LbDraft like = draft_of (play, LB_ENTRY_NOTE, NULL);

    if (events[i].shift != play->shift)
      continue;
    pass_minutes (play, 2, 6);
    if (!lb_demo_record_event (play->book, &like, &events[i], error))
      return FALSE;
  }

  return TRUE;
}

static gboolean
record_conditions (Play *play, GError **error)
{
  const gboolean is_foul = minutes_lost (play->shift) == LB_DEMO_SHIFT_MIN;
  const LbDraft like = draft_of (play, LB_ENTRY_CONDITION, NULL);
  gsize n_weathers;
  const LbDemoWeather *weathers = lb_demo_weathers (&n_weathers);
  const LbDemoWeather *weather =
    is_foul ? lb_demo_foul_weather ()
            : &weathers[lb_chance_between (&play->chance, 0, (int) n_weathers - 1)];

  return lb_demo_record_conditions (play->book, &like, play->shift, weather, error) &&
         lb_demo_record_crew (play->book, &like, error);
}

static gboolean
clean_ahead (Play *play, GError **error)
{
  const guint wanted = 5 + (guint) play->shift / 2;
  guint ahead = 0, cleaned = 0;

  for (guint k = 0; k < play->n_piles && ahead < wanted && cleaned < 6; k++) {
    Work *work = &play->works[play->order[k]];

    if (work->is_out || work->is_severed)
      continue;
    ahead++;
    if (work->is_clean)
      continue;
    if (!record_step (play, play->order[k], LB_STEP_CLEANED, NULL, error))
      return FALSE;
    work->is_clean = TRUE;
    cleaned++;
  }

  return TRUE;
}

/* In the last two shifts, with the crane away, leaning piles and some others are left on their last
 * bars until the hook is on them. */
static gboolean
waits_for_hook (const Play *play, guint i)
{
  return play->shift >= N_SHIFTS - 2 && !play->works[i].is_rigged &&
         (lb_ledger_pile (play->ledger, i)->batter > 0 || i % 3 == 0);
}

/* The next pile to burn, -1 for none. */
static int
next_to_burn (const Play *play)
{
  for (guint k = 0; k < play->n_piles; k++) {
    const guint i = play->order[k];
    const Work *work = &play->works[i];
    const guint n_left = lb_bar_set_count (work->left);

    if (work->is_clean && !work->is_out && n_left > (waits_for_hook (play, i) ? HOLD_BARS : 0))
      return (int) i;
  }

  return -1;
}

/* Trigger seconds for @n bars: 25 s a square inch by common practice, more while they learn. */
static double
trigger_of (Play *play, const LbPile *pile, int n)
{
  const int per_100_in2 = 2500 * (100 + 600 / (6 + play->shift)) / 100;
  const double area_in2 = pile->bar->area_m2 / (INCH * INCH) * n;

  return floor (area_in2 * per_100_in2 / 100 * lb_chance_between (&play->chance, 75, 140) / 100 +
                0.5);
}

/* Burns up to @most bars of pile @i as one act; how many, or -1. */
static int
burn (Play *play, guint i, int most, GError **error)
{
  const LbPile *pile = lb_ledger_pile (play->ledger, i);
  Work *work = &play->works[i];
  const int n_left = (int) lb_bar_set_count (work->left);
  const int n = MIN (most, waits_for_hook (play, i) ? n_left - HOLD_BARS : n_left);
  LbPoint places[LB_BARS_MAX];
  guint8 order[LB_BARS_MAX];
  LbDraft drafts[4];
  gsize n_drafts = 3;

  if (pile->batter > 0 && !work->is_rigged && n_left - n < HOLD_BARS) {
    if (!record_step (play, i, LB_STEP_RIGGED, NULL, error))
      return -1;
    work->is_rigged = TRUE;
  }

  lb_pile_bars_place (pile, &pile->outline, places);
  lb_bar_ring_order (places, pile->n_bars, work->left, order);
  pass_minutes (play, 3, 9);
  drafts[0] = draft_of (play, LB_ENTRY_BARS, pile);
  for (int bar = 0; bar < n; bar++)
    drafts[0].bars |= LB_BAR (order[bar]);
  drafts[1] = draft_of (play, LB_ENTRY_BURN_TIME, pile);
  drafts[1].amount = trigger_of (play, pile, n);
  drafts[2] = draft_of (play, LB_ENTRY_RODS, pile);
  drafts[2].amount = floor (drafts[1].amount / 42) + lb_chance_between (&play->chance, 1, 2);
  work->left &= ~drafts[0].bars;
  play->trigger_s += drafts[1].amount;
  play->store.rods -= drafts[2].amount;
  if (work->left == 0) {
    drafts[n_drafts] = draft_of (play, LB_ENTRY_STEP, pile);
    drafts[n_drafts++].what = lb_step_name (LB_STEP_SEVERED);
    work->is_severed = TRUE;
  }

  return lb_book_record (play->book, drafts, n_drafts, NULL, error) ? n : -1;
}

/* Elevation of the cut: a foot over the mudline. */
static double
cut_depth_feet (const LbPile *pile)
{
  return floor (-pile->mudline_m / FOOT - 1 + 0.5);
}

/* The last weeks' cards are ticked, and typed up with the dive; now and then one check is left open. */
static gboolean
record_checks (Play *play, const LbPile *pile, gint64 left_us, GError **error)
{
  const LbDraft like = draft_of (play, LB_ENTRY_CHECK, pile);

  return play->shift < FIRST_CHECKED_SHIFT ||
         lb_demo_record_checks (play->book, &like, left_us, pile->batter > 0,
                                (guint) play->shift % 4 == 1 ? 4 : G_MAXUINT, error);
}

/* One dive: the burning, then the line in the sheet once the diver is up. */
static gboolean
dive (Play *play, const char *diver, gint64 start_us, int n_bars, GError **error)
{
  const int first = next_to_burn (play);
  int left = n_bars;

  if (first < 0 || n_bars < 1)
    return TRUE;

  play->clock_us = MAX (play->clock_us, start_us + 10 * MINUTE_US);
  while (left > 0) {
    const int next = next_to_burn (play);
    const int burned = next < 0 ? 0 : burn (play, (guint) next, left, error);

    if (burned < 0)
      return FALSE;
    if (burned == 0)
      break;
    left -= burned;
  }

  const LbPile *pile = lb_ledger_pile (play->ledger, (guint) first);
  const double depth_ft = cut_depth_feet (pile);
  const int minutes = CLAMP (14 + (n_bars - left) * (500 - 8 * play->shift) / 100 +
                               lb_chance_between (&play->chance, -6, 8),
                             18, 96);
  LbDraft drafts[3] = { draft_of (play, LB_ENTRY_DIVE, pile) };

  drafts[0].what = diver;
  drafts[0].amount = depth_ft * FOOT;
  drafts[0].start_us = start_us;
  drafts[0].end_us = start_us + minutes * MINUTE_US;
  /* 30 ft a minute up. */
  drafts[0].up_us = drafts[0].end_us + (gint64) (depth_ft * 2) * G_USEC_PER_SEC;
  play->clock_us = MAX (play->clock_us, drafts[0].up_us) + MINUTE_US;
  drafts[0].at_us = play->clock_us;
  drafts[1] = draft_of (play, LB_ENTRY_DETAIL, NULL);
  drafts[1].what = LB_DETAIL_MODE;
  drafts[1].note = lb_shift_words (LB_WORDS_DIVE_MODE)[0];
  drafts[2] = draft_of (play, LB_ENTRY_DETAIL, NULL);
  drafts[2].what = LB_DETAIL_WORK;
  drafts[2].note = "burning bars";
  return record_checks (play, pile, start_us, error) &&
         lb_book_record (play->book, drafts, G_N_ELEMENTS (drafts), NULL, error);
}

static gboolean
rig_severed (Play *play, guint most, GError **error)
{
  for (guint k = 0; k < play->n_piles && most > 0; k++) {
    Work *work = &play->works[play->order[k]];

    if (!work->is_severed || work->is_rigged || work->is_out)
      continue;
    if (!record_step (play, play->order[k], LB_STEP_RIGGED, NULL, error))
      return FALSE;
    work->is_rigged = TRUE;
    most--;
  }

  return TRUE;
}

/* The pile came apart on the hook six feet over the mud; its stub is on the list again. */
static gboolean
record_break (Play *play, guint i, GError **error)
{
  const LbPile *pile = lb_ledger_pile (play->ledger, i);
  LbDraft draft = draft_of (play, LB_ENTRY_BROKEN, pile);

  draft.amount = pile->mudline_m + 6 * FOOT;
  draft.note = "Parted at an old crack; upper part landed on the barge";
  play->works[i] = (Work){ .is_out = TRUE };
  return lb_book_record (play->book, &draft, 1, NULL, error);
}

static gboolean
pull_rigged (Play *play, guint most, GError **error)
{
  for (guint k = 0; k < play->n_piles && most > 0; k++) {
    const guint i = play->order[k];
    Work *work = &play->works[i];

    if (!work->is_severed || !work->is_rigged || work->is_out)
      continue;
    pass_minutes (play, 8, 20);
    if (strcmp (lb_ledger_pile (play->ledger, i)->mark, "D10") == 0) {
      if (!record_break (play, i, error))
        return FALSE;
    } else if (!record_step (play, i, LB_STEP_PULLED, NULL, error)) {
      return FALSE;
    }
    work->is_out = TRUE;
    most--;
  }

  return TRUE;
}

/* Two piles stood so loose in the silt that the crane drew them whole. */
static gboolean
draw_whole (Play *play, GError **error)
{
  const char *mark = play->shift == 12 ? "FG11" : play->shift == 23 ? "EF9" : NULL;
  const int i = mark != NULL ? lb_ledger_find_mark (play->ledger, mark) : -1;

  if (i < 0 || play->works[i].is_out || play->works[i].is_severed)
    return TRUE;

  LbDraft draft = draft_of (play, LB_ENTRY_DRAWN, lb_ledger_pile (play->ledger, (guint) i));

  draft.note = "Moved on the first strain; drawn whole";
  play->works[i].is_out = TRUE;
  return lb_book_record (play->book, &draft, 1, NULL, error);
}

static gboolean
record_slips (Play *play, GError **error)
{
  LbDraft draft = draft_of (play, LB_ENTRY_STEP, lb_ledger_pile (play->ledger, 0));

  if (play->shift == 3) {
    draft.what = lb_step_name (LB_STEP_SEVERED);
    return record_slip (play, &draft, error);
  }
  if (play->shift == 16) {
    draft.kind = LB_ENTRY_BARS;
    draft.bars = LB_BAR (0) | LB_BAR (1);
    return record_slip (play, &draft, error);
  }
  if (play->shift == 26) {
    draft = draft_of (play, LB_ENTRY_DELAY, NULL);
    draft.what = "current";
    draft.amount = 300 * 60.0;
    return record_slip (play, &draft, error);
  }

  return TRUE;
}

/* 24 cu ft a minute of trigger time at the surface, a sixth more at these depths, a tenth lost. */
static gboolean
record_used (Play *play, GError **error)
{
  LbDraft drafts[2] = { draft_of (play, LB_ENTRY_OXYGEN, NULL),
                        draft_of (play, LB_ENTRY_RODS, NULL) };
  const double cubic_feet = floor (play->trigger_s * 24 / 60 * 1.17 *
                                   lb_chance_between (&play->chance, 104, 122) / 100);

  drafts[0].amount = cubic_feet * CUBIC_FOOT;
  drafts[1].amount = lb_chance_between (&play->chance, 1, 3);
  drafts[1].note = "bad strikes and stubs";
  if (play->trigger_s > 0) {
    play->store.rods -= drafts[1].amount;
    play->store.cylinders -= cubic_feet / CYLINDER_CUBIC_FEET;
  }
  return play->trigger_s <= 0 || lb_book_record (play->book, drafts, 2, NULL, error);
}

/* Piles the crane can lift in a shift. It is away twice, and called off to another berth for the
 * last three shifts, so that what is cut waits for it. */
static guint
lifts_of_shift (int shift)
{
  if (shift == 4 || shift == 15 || shift >= N_SHIFTS - 3)
    return 1;

  return 2 + (guint) shift / 9;
}

static gboolean
work_shift (Play *play, gint64 opened_us, GError **error)
{
  const int n_bars = bars_of_shift (play);

  if (!clean_ahead (play, error) ||
      !dive (play, "diver 1", opened_us + 35 * MINUTE_US, (n_bars + 1) / 2, error) ||
      !dive (play, "diver 2", opened_us + 170 * MINUTE_US, n_bars / 2, error))
    return FALSE;

  play->clock_us = MAX (play->clock_us, opened_us + 300 * MINUTE_US);
  return rig_severed (play, play->shift < N_SHIFTS - 2 ? 4 : 1, error) &&
         pull_rigged (play, lifts_of_shift (play->shift), error) && draw_whole (play, error) &&
         record_slips (play, error) && record_used (play, error);
}

static gboolean
record_end (Play *play, gint64 opened_us, GError **error)
{
  LbDraft like;

  play->clock_us = MAX (play->clock_us, opened_us + LB_DEMO_SHIFT_MIN * MINUTE_US);
  like = draft_of (play, LB_ENTRY_HOURS, NULL);
  return lb_demo_record_end (play->book, &like, play->shift, opened_us, &play->store, error);
}

static gboolean
play_shift (Play *play, guint32 day, GError **error)
{
  /* 13:00 UTC: a morning in each of the American time zones that the demo's units come from. */
  const gint64 opened_us = ((gint64) day - JULIAN_1970) * DAY_US + 13 * 60 * MINUTE_US;

  lb_book_set_now (play->book, opened_us);
  play->clock_us = opened_us;
  play->trigger_s = 0;
  g_clear_pointer (&play->shift_id, g_free);

  if (!lb_book_open_shift (play->book, day, "day", WHO, &play->shift_id, error) ||
      !record_conditions (play, error) || !record_events (play, error))
    return FALSE;

  return (minutes_lost (play->shift) == LB_DEMO_SHIFT_MIN || work_shift (play, opened_us, error)) &&
         record_end (play, opened_us, error);
}

/* In the last shift they are still open. */
static gboolean
answer_findings (Play *play, GError **error)
{
  const LbDraft like = draft_of (play, LB_ENTRY_ANSWER, NULL);

  return play->shift == N_SHIFTS - 1 ||
         lb_demo_answer_findings (play->book, play->record, &like, error);
}

/* --- The order of work -------------------------------------------------------------------- */

/* When the crew comes to a pile: bents 12 and 11, the dolphin beside them, then on toward the
 * shore, the other dolphin last. */
static int
turn_of (const LbPile *pile)
{
  const int bent = atoi (pile->bent);

  if (bent > 0)
    return bent > 10 ? 12 - bent : 13 - bent;

  return pile->mark[0] == 'X' ? 2 : 20;
}

static guint *
order_of_work (const LbLedger *ledger)
{
  const guint n = ledger->piles->len;
  guint *order = g_new (guint, n + 1);
  guint at = 0;

  for (int turn = 0; turn <= 20; turn++) {
    for (guint i = 0; i < n; i++) {
      if (turn_of (lb_ledger_pile (ledger, i)) == turn)
        order[at++] = i;
    }
  }
  g_assert (at == n);

  return order;
}

gboolean
lb_demo_shifts_record (LbBook *book, const LbLedger *ledger, GError **error)
{
  g_return_val_if_fail (book != NULL, FALSE);
  g_return_val_if_fail (ledger != NULL, FALSE);

  g_autofree guint *order = order_of_work (ledger);
  g_autofree Work *works = g_new0 (Work, ledger->piles->len + 1);
  g_autoptr (LbLedger) record = lb_book_read (book, NULL, error);
  GDate date;
  Play play = { .book = book,
                .ledger = ledger,
                .record = record,
                .order = order,
                .works = works,
                .n_piles = ledger->piles->len,
                .chance = { SEED },
                .store = LB_DEMO_STORE_INIT };
  gboolean is_told = record != NULL;

  for (guint i = 0; i < play.n_piles; i++)
    works[i].left = lb_bar_set_all (lb_ledger_pile (ledger, i)->n_bars);

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, 8, G_DATE_JUNE, 2026);
  for (play.shift = 0; play.shift < N_SHIFTS && is_told; play.shift++) {
    is_told = play_shift (&play, g_date_get_julian (&date), error) &&
              answer_findings (&play, error);
    do
      g_date_add_days (&date, 1);
    while (g_date_get_weekday (&date) == G_DATE_SUNDAY);
  }
  g_free (play.shift_id);

  return is_told;
}
