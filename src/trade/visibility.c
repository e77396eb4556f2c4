/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/visibility.h"

#include "trade/msgid.h"

#include <string.h>

/* NIST SP 811, appendix B: exact. */
#define FOOT 0.3048
#define INCH 0.0254

#define POOR_UNDER_M (3 * FOOT)
#define FAIR_UNDER_M (10 * FOOT)
/* A hand's breadth is as good as nothing. */
#define NONE_UNDER_M (4 * INCH)

typedef struct
{
  const char *word;
  LbVisibility visibility;
} Word;

/* Looked for in this order. */
static const Word words[] = {
  { "none", LB_VISIBILITY_NONE },  { "zero", LB_VISIBILITY_NONE },   { "nil", LB_VISIBILITY_NONE },
  { "black", LB_VISIBILITY_NONE }, { "no vis", LB_VISIBILITY_NONE }, { "poor", LB_VISIBILITY_POOR },
  { "bad", LB_VISIBILITY_POOR },   { "fair", LB_VISIBILITY_FAIR },   { "good", LB_VISIBILITY_GOOD },
  { "clear", LB_VISIBILITY_GOOD },
};

typedef struct
{
  const char *key;
  const char *name; /* msgid */
} Name;

static const Name names[LB_N_VISIBILITIES] = {
  [LB_VISIBILITY_UNKNOWN] = { "unknown", N_ ("visibility not said") },
  [LB_VISIBILITY_NONE] = { "none", N_ ("no visibility") },
  [LB_VISIBILITY_POOR] = { "poor", N_ ("poor visibility") },
  [LB_VISIBILITY_FAIR] = { "fair", N_ ("fair visibility") },
  [LB_VISIBILITY_GOOD] = { "good", N_ ("good visibility") },
};

static LbVisibility
class_of (double metres)
{
  if (metres < NONE_UNDER_M)
    return LB_VISIBILITY_NONE;
  if (metres < POOR_UNDER_M)
    return LB_VISIBILITY_POOR;
  return metres <= FAIR_UNDER_M ? LB_VISIBILITY_FAIR : LB_VISIBILITY_GOOD;
}

/* The unit of the first number is the first that stands behind it, past the other end of a range:
 * "2-3 ft", "2 to 3 ft". */
static double
metres_per_unit (const char *after, LbUnits units)
{
  after += strspn (after, "0123456789.,-–~ to+");
  if (g_str_has_prefix (after, "ft") || g_str_has_prefix (after, "f") || *after == '\'')
    return FOOT;
  if (g_str_has_prefix (after, "in") || *after == '"')
    return INCH;
  if (g_str_has_prefix (after, "cm"))
    return 0.01;
  if (*after == 'm')
    return 1;
  return units == LB_UNITS_US ? FOOT : 1;
}

LbVisibility
lb_visibility_from_text (const char *text, LbUnits units)
{
  g_return_val_if_fail (text, LB_VISIBILITY_UNKNOWN);

  g_autofree char *said = g_ascii_strdown (text, -1);
  const gsize at = strcspn (said, "0123456789");

  if (said[at] == '\0') {
    for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
      if (strstr (said, words[i].word) != NULL)
        return words[i].visibility;
    }
    return LB_VISIBILITY_UNKNOWN;
  }

  char *end = NULL;

  /* Either decimal sign. */
  g_strdelimit (said + at, ",", '.');
  const double number = g_ascii_strtod (said + at, &end);

  return class_of (number * metres_per_unit (end, units));
}

const char *
lb_visibility_key (LbVisibility visibility)
{
  g_return_val_if_fail ((guint) visibility < LB_N_VISIBILITIES, NULL);

  return names[visibility].key;
}

gboolean
lb_visibility_from_key (const char *key, LbVisibility *out_visibility)
{
  g_return_val_if_fail (key, FALSE);
  g_return_val_if_fail (out_visibility, FALSE);

  for (int i = 0; i < LB_N_VISIBILITIES; i++) {
    if (strcmp (key, names[i].key) == 0) {
      *out_visibility = (LbVisibility) i;
      return TRUE;
    }
  }
  return FALSE;
}

const char *
lb_visibility_name (LbVisibility visibility)
{
  g_return_val_if_fail ((guint) visibility < LB_N_VISIBILITIES, NULL);

  return names[visibility].name;
}
