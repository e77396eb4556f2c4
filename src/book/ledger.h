/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/text-pool.h"
#include "trade/pile.h"
#include "trade/step.h"

#include <glib.h>

G_BEGIN_DECLS

/* The job in memory, as plain structs: what the file says and no conclusion. Append-only, like
 * the file: reading on adds to it. Strings live as long as the ledger.
 *
 * An entry belongs to an act: what one gesture of one person stored together, as all of it or
 * none. To take something back is one more entry, that names the act. */
/* Up to “note” they are work, which the order of the shifts decides about; those after it say what
 * is known, meant or settled. */
typedef enum {
  LB_ENTRY_STEP,      /* pile reached a step:             pile, what = step name */
  LB_ENTRY_BARS,      /* bars burned:                     pile, bars (which) or count */
  LB_ENTRY_GONE,      /* bars found gone, rusted through or cut by others: pile, bars */
  LB_ENTRY_DRAWN,     /* pile drawn whole, not cut:       pile */
  LB_ENTRY_BROKEN,    /* pile broke, a stub is left:      pile, amount = stub head elevation m */
  LB_ENTRY_BURN_TIME, /* trigger time at a pile:          pile, amount = s */
  LB_ENTRY_RODS,      /* rods used:                       pile or none, amount = rods */
  LB_ENTRY_OXYGEN,    /* oxygen used:                     pile or none, amount = m3 free gas */
  LB_ENTRY_DIVE,      /* a dive: what = diver, amount = pneumo depth m, start/end = left surface,
                         left bottom; up = reached surface, pile = first worked or none */
  LB_ENTRY_DELAY,     /* what = cause, amount = s, start if known */
  LB_ENTRY_FAULT,     /* gear fault: what = part, amount = s lost */
  LB_ENTRY_CONDITION, /* what = "wind", "sea", "current", "visibility", "water temperature", "tide",
                         note = as said */
  LB_ENTRY_NOTE,      /* pile or none, note */
  LB_ENTRY_SET_ASIDE, /* burning in a shift, at a pile or none for all of it, teaches nothing: note
                         = reason */
  LB_ENTRY_TAKE_IN,   /* and teaches again:                 pile or none */
  LB_ENTRY_CHECK,     /* a caution gone through before a dive: pile, what = the caution's key,
                         amount = 1 ticked, 0 left open; start = when that dive left the surface,
                         0 for the next one */
  LB_ENTRY_HOURS,     /* the shift's working hours: start/end */
  LB_ENTRY_CREW,     /* who had a charge in the shift: what = the charge, note = role or initials */
  LB_ENTRY_STOCK,    /* counted on hand:                what = "rods", "cylinders", amount */
  LB_ENTRY_DELIVERY, /* came aboard:                    what = "rods", "cylinders", amount */
  LB_ENTRY_DETAIL,   /* more about the entry before it in its act that is no detail itself:
                          what = which ("mode", "borne by", "mended", …), note = what of it */
  LB_ENTRY_ANSWER,   /* what somebody says to a finding: what = its key (finding.h), note = reason;
                          shift and pile if it has them */
  LB_ENTRY_CORRECTION, /* first of an act that changes a signed shift: note = reason */
  LB_ENTRY_SEAL,       /* the shift is signed: who = by whom, note = the seal (seal.h) */
  LB_ENTRY_FACT,       /* pile fact set: pile, what = fact name, note = value in metric, "" unknown;
                          of = the act that set it before, as far as was known here */
  LB_ENTRY_SETTING,    /* job setting: what = key, note = value, of as for facts; some hold a table:
                          setting-table.h */
  LB_ENTRY_TAKE_BACK,  /* of = the act taken back (a take-back can itself be taken back) */
} LbEntryKind;

/* The settings that hold a table. */
#define LB_SETTING_DIVE_TABLE  "dive-table"
#define LB_SETTING_CRANE_CHART "crane-chart"
#define LB_SETTING_GROUND      "ground"

/* The setting that holds the crew's own cautions, as lb_cautions_from_text() reads them; "" for none. */
#define LB_SETTING_CAUTIONS "cautions"

/* The setting that holds the job's own list of what delays are put to, as lb_delay_causes_from_text()
 * reads it; "" for those built in. */
#define LB_SETTING_DELAY_CAUSES "delay-causes"

/* The setting that says for which visibility the cuts are planned, by lb_visibility_key(); "" for
 * the one that was said last. */
#define LB_SETTING_VISIBILITY "visibility"

/* What is counted in stock. */
#define LB_STOCK_RODS      "rods"
#define LB_STOCK_CYLINDERS "cylinders"

/* Charges in a shift. 29 CFR 1910.423(d) and 46 CFR 197.482 ask who was in charge. */
#define LB_CHARGE_SUPERVISOR "diving supervisor"
#define LB_CHARGE_IN_CHARGE  "person in charge"
#define LB_CHARGE_CRANE      "crane operator"
#define LB_CHARGE_TENDERS    "tenders"
#define LB_CHARGE_STANDBY    "standby diver"

/* Details: of a dive its mode, the visibility where it went, the nature of its work, the marks of piles
 * it went on to; of a delay who
 * bears it; of a gear fault what was done about it. */
#define LB_DETAIL_MODE       "mode"
#define LB_DETAIL_VISIBILITY "visibility"
#define LB_DETAIL_WORK       "work"
#define LB_DETAIL_ALSO_AT    "also at"
#define LB_DETAIL_BORNE_BY   "borne by"
#define LB_DETAIL_DONE       "done"

#define LB_N_ENTRY_KINDS (LB_ENTRY_TAKE_BACK + 1)

const char *lb_entry_kind_name (LbEntryKind kind); /* "step", "bars", …: key in the file */

/* By the first @n bytes of @name, whatever comes after them. */
gboolean lb_entry_kind_from_name (const char *name, gsize n, LbEntryKind *out_kind);

typedef struct
{
  gint64 seq;      /* order in this file */
  const char *id;  /* unique everywhere */
  const char *act; /* id of the act's first entry */
  gint64 at_us;    /* UTC µs when it was recorded */
  const char *who; /* a role or initials, "" when not said */
  int shift;       /* index in the ledger's shifts, -1 for what belongs to none (facts, settings) */
  int pile;        /* index in the ledger's piles, -1 for none */
  LbEntryKind kind;
  guint count;
  const char *what; /* see the kinds; "" for none */
  LbBarSet bars;
  double amount;                  /* NAN when not said */
  gint64 start_us, end_us, up_us; /* 0 when not said */
  const char *note;
  const char *of; /* act taken back, or the one that set this fact before; "" for none */
} LbEntry;

/* One shift of one crew. Days are Julian day numbers as in GDate. */
typedef struct
{
  gint64 seq; /* order in this file, 1 for the first */
  const char *id;
  guint32 day;
  const char *watch; /* "day" or "night" */
  gint64 opened_us;
  const char *who;
} LbShift;

typedef struct
{
  GArray *piles;          /* LbPile, as they first came in; index = LbEntry.pile */
  GArray *shifts;         /* LbShift, by day, then as opened */
  GArray *entries;        /* LbEntry, by seq; read them through lb_ledger_entry() */
  guint32 *order;         /* where the entries stand in time, NULL while that is by seq */
  GHashTable *pile_by_id; /* of the piles up to the last one asked for: lb_ledger_find_pile() */
  LbTextPool *strings;
  gint64 last_seq;
  gint64 latest_us; /* the latest at_us of all */
  const char *job_id;
  const char *job_made; /* the moment it was made, UTC µs, as the file has it */
  guint n_seals_noted;  /* how many seals the file says it has */
} LbLedger;

LbLedger *lb_ledger_new (void);
void lb_ledger_free (LbLedger *ledger);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbLedger, lb_ledger_free)

static inline const LbPile *
lb_ledger_pile (const LbLedger *ledger, guint i)
{
  return &g_array_index (ledger->piles, LbPile, i);
}

/* The @i-th entry in the order in which they were recorded: by at_us, then by id. That is the same
 * in every file that holds them, whoever's entries came in first; where one program wrote alone it
 * is the order of the file. The entries of an act follow each other. */
static inline const LbEntry *
lb_ledger_entry (const LbLedger *ledger, guint i)
{
  return &g_array_index (ledger->entries, LbEntry, ledger->order != NULL ? ledger->order[i] : i);
}

/* By number in the file. */
static inline const LbEntry *
lb_ledger_entry_of_seq (const LbLedger *ledger, gint64 seq)
{
  return &g_array_index (ledger->entries, LbEntry, (guint) seq - 1);
}

/* Ids are TAG-N: by tag, then by number; like strcmp(). */
int lb_id_compare (const char *one, const char *other);

/* Whether an entry says something new, and is not there to take back or to correct. */
static inline gboolean
lb_entry_is_new (const LbEntry *entry)
{
  return entry->kind != LB_ENTRY_TAKE_BACK && entry->kind != LB_ENTRY_CORRECTION;
}

/* Where an entry stands among the others; like strcmp(). */
int lb_entry_compare (const LbEntry *one, const LbEntry *other);

static inline const LbShift *
lb_ledger_shift (const LbLedger *ledger, guint i)
{
  return &g_array_index (ledger->shifts, LbShift, i);
}

/* Index of the pile with that id, -1 for none. */
int lb_ledger_find_pile (const LbLedger *ledger, const char *id);

/* What tells marks apart: lower case, without spaces. To be freed. */
char *lb_mark_key (const char *mark);

/* Index of the pile first called @mark (any case), -1 for none, by looking at each. Facts can rename: see
 * LbFold. */
int lb_ledger_find_mark (const LbLedger *ledger, const char *mark);

/* Index of a shift, by id, or the first of that day and watch; -1 for none. */
int lb_ledger_find_shift (const LbLedger *ledger, const char *id);
int lb_ledger_find_shift_of_day (const LbLedger *ledger, guint32 day, const char *watch);

G_END_DECLS
