/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The conditions of the table of cautions, what figures each of them knows, and the blanks in the
 * words that those figures fill. A row whose words ask for a figure that its condition does not know
 * is refused when it is read, so that no card is ever printed with a hole in a warning. */
#include "trade/caution-when.h"

#include <string.h>

#define KNOWS(blank) (1u << LB_BLANK_##blank)

#define KNOWS_CAPACITY \
  (KNOWS (LOAD) | KNOWS (LOAD_MOST) | KNOWS (CAPACITY) | KNOWS (SHARE) | KNOWS (SHARE_MOST))

G_STATIC_ASSERT (LB_N_CAUTION_BLANKS <= 32);

static const struct
{
  const char *key;
  guint32 knows; /* bit n is blank n */
  gboolean is_ordinary;
} whens[LB_N_CAUTION_WHENS] = {
  [LB_WHEN_ALWAYS] = { "always", 0, TRUE },
  [LB_WHEN_BURNING] = { "burning", 0, TRUE },
  [LB_WHEN_OXYGEN] = { "oxygen", KNOWS (REGULATOR), TRUE },
  [LB_WHEN_UNDER_WATER] = { "under-water", KNOWS (DEPTH), TRUE },
  [LB_WHEN_SPLASH_ZONE] = { "splash-zone", 0 },
  [LB_WHEN_BATTERED] = { "battered", KNOWS (LEAN) | KNOWS (LEAN_SIDE) | KNOWS (LEAD_SIDE) },
  [LB_WHEN_BATTERED_BURN] = { "battered-burn",
                              KNOWS (LEAN) | KNOWS (LEAN_SIDE) | KNOWS (LEAD_SIDE) },
  [LB_WHEN_LEAN_UNKNOWN] = { "lean-unknown", 0 },
  [LB_WHEN_PLUMB_BURN] = { "plumb-burn", 0 },
  [LB_WHEN_STRAND] = { "strand", 0 },
  [LB_WHEN_HOLLOW] = { "hollow", KNOWS (VOID) },
  [LB_WHEN_BARS_UNKNOWN] = { "bars-unknown", 0 },
  [LB_WHEN_CONCRETE_LEFT] = { "concrete-left", 0 },
  [LB_WHEN_NOT_STANDING] = { "not-standing", 0 },
  [LB_WHEN_HOLD_KNOWN] = { "hold-known", KNOWS (BAR) },
  [LB_WHEN_KEPT_BAR] = { "kept-bar", KNOWS (BAR) },
  [LB_WHEN_HINGE] = { "hinge", KNOWS (BAR) },
  [LB_WHEN_HOLD_UNKNOWN] = { "hold-unknown", KNOWS (LEAN) | KNOWS (LEAN_SIDE) | KNOWS (LEAD_SIDE) },
  [LB_WHEN_SEVERAL_DIVES] = { "several-dives", KNOWS (BURN) | KNOWS (BURN_MOST) | KNOWS (LIMIT) |
                                                 KNOWS (DIVES) | KNOWS (DIVES_MOST) },
  [LB_WHEN_DIVES_MAY_GROW] = { "dives-may-grow", KNOWS (BURN) | KNOWS (BURN_MOST) | KNOWS (LIMIT) |
                                                   KNOWS (DIVES) | KNOWS (DIVES_MOST) },
  [LB_WHEN_PAST_LIMIT] = { "past-limit", KNOWS (BURN) | KNOWS (BURN_MOST) | KNOWS (LIMIT) },
  [LB_WHEN_LIMIT_UNKNOWN] = { "limit-unknown", 0 },
  [LB_WHEN_CURRENT_OVER] = { "current-over", KNOWS (CURRENT) | KNOWS (CURRENT_LIMIT) },
  [LB_WHEN_LEAD_DROP_OVER] = { "lead-drop-over",
                               KNOWS (LEAD_DROP) | KNOWS (LEAD_DROP_MOST) | KNOWS (LEAD_LENGTH),
                               TRUE },
  [LB_WHEN_LEADS_ASSUMED] = { "leads-assumed",
                              KNOWS (LEAD_DROP) | KNOWS (LEAD_DROP_MOST) | KNOWS (LEAD_LENGTH),
                              TRUE },
  [LB_WHEN_RESIDUAL_LOW] = { "residual-low", KNOWS (RESIDUAL) | KNOWS (REGULATOR) },
  [LB_WHEN_SUBMERGED_LIFT] = { "submerged-lift", 0, TRUE },
  [LB_WHEN_LOAD_KNOWN] = { "load-known", KNOWS (LOAD) | KNOWS (LOAD_MOST) },
  [LB_WHEN_LOAD_UNKNOWN] = { "load-unknown", 0 },
  [LB_WHEN_CAPACITY_NEAR] = { "capacity-near", KNOWS_CAPACITY },
  [LB_WHEN_CAPACITY_OVER] = { "capacity-over", KNOWS_CAPACITY },
  [LB_WHEN_CAPACITY_UNKNOWN] = { "capacity-unknown", KNOWS (LOAD) | KNOWS (LOAD_MOST), TRUE },
  [LB_WHEN_BEYOND_CHART] = { "beyond-chart", KNOWS (RADIUS) },
  [LB_WHEN_BARGE_CRANE] = { "barge-crane", 0, TRUE },
  [LB_WHEN_LIST_OVER] = { "list-over", KNOWS (LIST) | KNOWS (LIST_LIMIT) },
  [LB_WHEN_TWO_CRANES] = { "two-cranes", 0, TRUE },
  [LB_WHEN_SLING_FLAT] = { "sling-flat", KNOWS (ANGLE) },
  [LB_WHEN_SLING_OVER] = { "sling-over", KNOWS (TENSION) | KNOWS (RATING) },
  [LB_WHEN_WHOLE_PULL] = { "whole-pull", KNOWS (GRIP) },
  [LB_WHEN_ON_MUD] = { "on-mud", KNOWS (SUCTION) },
  [LB_WHEN_BREAKING] = { "breaking", 0, TRUE },
};

static const char *const blanks[LB_N_CAUTION_BLANKS] = {
  [LB_BLANK_REGULATOR] = "regulator",
  [LB_BLANK_DEPTH] = "depth",
  [LB_BLANK_LEAN] = "lean",
  [LB_BLANK_LEAN_SIDE] = "lean-side",
  [LB_BLANK_LEAD_SIDE] = "lead-side",
  [LB_BLANK_VOID] = "void",
  [LB_BLANK_BAR] = "bar",
  [LB_BLANK_BURN] = "burn",
  [LB_BLANK_BURN_MOST] = "burn-most",
  [LB_BLANK_LIMIT] = "limit",
  [LB_BLANK_DIVES] = "dives",
  [LB_BLANK_DIVES_MOST] = "dives-most",
  [LB_BLANK_CURRENT] = "current",
  [LB_BLANK_CURRENT_LIMIT] = "current-limit",
  [LB_BLANK_LEAD_DROP] = "lead-drop",
  [LB_BLANK_LEAD_DROP_MOST] = "lead-drop-most",
  [LB_BLANK_LEAD_LENGTH] = "lead-length",
  [LB_BLANK_RESIDUAL] = "residual",
  [LB_BLANK_LOAD] = "load",
  [LB_BLANK_LOAD_MOST] = "load-most",
  [LB_BLANK_CAPACITY] = "capacity",
  [LB_BLANK_SHARE] = "share",
  [LB_BLANK_SHARE_MOST] = "share-most",
  [LB_BLANK_RADIUS] = "radius",
  [LB_BLANK_LIST] = "list",
  [LB_BLANK_LIST_LIMIT] = "list-limit",
  [LB_BLANK_ANGLE] = "angle",
  [LB_BLANK_TENSION] = "tension",
  [LB_BLANK_RATING] = "rating",
  [LB_BLANK_GRIP] = "grip",
  [LB_BLANK_SUCTION] = "suction",
};

const char *
lb_caution_when_key (LbCautionWhen when)
{
  g_return_val_if_fail (when < LB_N_CAUTION_WHENS, NULL);

  return whens[when].key;
}

gboolean
lb_caution_when_from_key (const char *key, LbCautionWhen *out_when)
{
  g_return_val_if_fail (key && out_when, FALSE);

  for (guint i = 0; i < LB_N_CAUTION_WHENS; i++) {
    if (g_str_equal (whens[i].key, key)) {
      *out_when = (LbCautionWhen) i;
      return TRUE;
    }
  }
  return FALSE;
}

gboolean
lb_caution_when_is_ordinary (LbCautionWhen when)
{
  g_return_val_if_fail (when < LB_N_CAUTION_WHENS, FALSE);

  return whens[when].is_ordinary;
}

const char *
lb_caution_blank_key (LbCautionBlank blank)
{
  g_return_val_if_fail (blank < LB_N_CAUTION_BLANKS, NULL);

  return blanks[blank];
}

gboolean
lb_caution_when_knows (LbCautionWhen when, LbCautionBlank blank)
{
  g_return_val_if_fail (when < LB_N_CAUTION_WHENS && blank < LB_N_CAUTION_BLANKS, FALSE);

  return (whens[when].knows >> blank & 1) != 0;
}

/* The blank that @at, an opening brace, begins; %LB_N_CAUTION_BLANKS for none. */
static guint
blank_at (const char *at, gsize *out_length)
{
  for (guint i = 0; i < LB_N_CAUTION_BLANKS; i++) {
    const gsize length = strlen (blanks[i]);

    if (strncmp (at + 1, blanks[i], length) == 0 && at[1 + length] == '}') {
      *out_length = length + 2;
      return i;
    }
  }
  return LB_N_CAUTION_BLANKS;
}

char *
lb_caution_words_stray (LbCautionWhen when, const char *words)
{
  g_return_val_if_fail (when < LB_N_CAUTION_WHENS && words, NULL);

  for (const char *at = words + strcspn (words, "{}"); *at != '\0'; at += strcspn (at, "{}")) {
    const char *end = strpbrk (at + 1, "{}");
    gsize length = 0;
    const guint blank = *at == '{' ? blank_at (at, &length) : LB_N_CAUTION_BLANKS;

    if (blank == LB_N_CAUTION_BLANKS || !lb_caution_when_knows (when, (LbCautionBlank) blank))
      return *at == '{' && end != NULL && *end == '}' ? g_strndup (at, (gsize) (end - at) + 1)
                                                      : g_strndup (at, 1);
    at += length;
  }
  return NULL;
}

char *
lb_caution_words_fill (const char *words, const char *const values[LB_N_CAUTION_BLANKS])
{
  g_return_val_if_fail (words && values, NULL);

  GString *filled = g_string_new (NULL);

  while (*words != '\0') {
    gsize length = strcspn (words, "{");

    g_string_append_len (filled, words, (gssize) length);
    words += length;
    if (*words == '\0')
      break;

    const guint blank = blank_at (words, &length);

    if (blank == LB_N_CAUTION_BLANKS) {
      length = 1;
      g_string_append_c (filled, '{');
    } else {
      g_string_append (filled, values[blank] != NULL ? values[blank] : "–");
    }
    words += length;
  }
  return g_string_free (filled, FALSE);
}
