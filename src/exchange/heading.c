/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Common surveying names of a pile's facts. No standard fixes them: the table is common practice of
 * the PNEZD kind of list (point, northing, easting, elevation, description) and of pile schedules.
 * A fact's names are ranked from the plainest to the vaguest, so that "mark" beats "point" where a
 * list has both. */
#include "exchange/heading.h"

#include <string.h>

typedef struct
{
  LbFact fact;
  const char *names; /* best first, "|" between them */
} Names;

static const Names fact_names[] = {
  { LB_FACT_MARK, "mark|pile|pile mark|name|id|label|point|pt|pnt|point no|pt no|no|number|nr" },
  { LB_FACT_BENT, "bent|bent no|line|bent line|axis" },
  { LB_FACT_ROW, "row|row no|row letter" },
  { LB_FACT_NOTE, "note|notes|description|desc|descr|remarks|comment|comments|code" },
  { LB_FACT_X, "x|easting|east|e" },
  { LB_FACT_Y, "y|northing|north|n" },
  { LB_FACT_SHAPE, "shape|section|type" },
  { LB_FACT_WIDTH, "width|diameter|dia|diam|size|side|across flats" },
  { LB_FACT_TIP_WIDTH, "tip width|toe width|tip diameter|toe diameter|tip dia|tip size" },
  { LB_FACT_VOID, "void|void diameter|hole|core|bore" },
  { LB_FACT_BAR, "bar|bar size|rebar|rebar size|steel|bars" },
  { LB_FACT_N_BARS, "n bars|no of bars|number of bars|no bars|num bars|bar count|bars|count" },
  { LB_FACT_BAR_INSET, "bar inset|inset|cover" },
  { LB_FACT_BAR_PLACES, "bar places|bar layout|bar arrangement" },
  { LB_FACT_BATTER, "batter|rake|slope|inclination|batter angle|lean" },
  { LB_FACT_BEARING,
    "bearing|azimuth|az|direction|batter bearing|batter direction|lean direction" },
  { LB_FACT_HEAD,
    "head|head elevation|head elev|head el|top|top elevation|top elev|top el|cutoff|cut off|"
    "cutoff elevation|cut off elevation|cutoff elev|cut off elev|elevation|elev|el|z|rl|level" },
  { LB_FACT_CUT, "cut|cut elevation|cut elev|cut el|cut level" },
  { LB_FACT_MUDLINE, "mudline|mud line|mudline elevation|mudline elev|mudline el|mud|bed|bed level|"
                     "seabed|ground" },
  { LB_FACT_TOE, "toe|tip|toe elevation|tip elevation|toe elev|tip elev|toe level|tip level" },
  { LB_FACT_CONCRETE, "concrete left" },
  { LB_FACT_PINNED, "kept bars" },
  { LB_FACT_ORDER, "burning order" },
  { LB_FACT_REMOVAL, "removal" },
};

/* Words for units in headings, longer ones first, and the word the trade reads. The survey foot is longer by two parts
 * in a million (NIST SP 811, appendix B): nothing on the grid of a pier. */
static const struct
{
  const char *word;
  const char *unit;
  LbUnits units;
} unit_words[] = {
  { "us survey ft", "ft", LB_UNITS_US }, { "us ft", "ft", LB_UNITS_US },
  { "usft", "ft", LB_UNITS_US },         { "ftus", "ft", LB_UNITS_US },
  { "ft", "ft", LB_UNITS_US },           { "feet", "ft", LB_UNITS_US },
  { "foot", "ft", LB_UNITS_US },         { "in", "in", LB_UNITS_US },
  { "inch", "in", LB_UNITS_US },         { "inches", "in", LB_UNITS_US },
  { "m", "m", LB_UNITS_METRIC },         { "metre", "m", LB_UNITS_METRIC },
  { "metres", "m", LB_UNITS_METRIC },    { "meter", "m", LB_UNITS_METRIC },
  { "meters", "m", LB_UNITS_METRIC },    { "cm", "cm", LB_UNITS_METRIC },
  { "mm", "mm", LB_UNITS_METRIC },       { "deg", "deg", LB_UNITS_METRIC },
  { "degrees", "deg", LB_UNITS_METRIC }, { "°", "deg", LB_UNITS_METRIC },
};

/* Lower case, with one space for whatever stands between words. */
static char *
plain_words (const char *text)
{
  g_autofree char *lower = g_utf8_strdown (text, -1);
  GString *words = g_string_new (NULL);

  for (const char *at = lower; *at != '\0'; at = g_utf8_next_char (at)) {
    const gunichar c = g_utf8_get_char (at);

    if (g_unichar_isalnum (c) || c == 0x00b0 /* ° */)
      g_string_append_unichar (words, c);
    else if (words->len > 0 && words->str[words->len - 1] != ' ')
      g_string_append_c (words, ' ');
  }
  if (words->len > 0 && words->str[words->len - 1] == ' ')
    g_string_truncate (words, words->len - 1);

  return g_string_free (words, FALSE);
}

/* Takes a unit off the end of @words. */
static void
take_unit (char *words, LbHeading *heading)
{
  const gsize length = strlen (words);

  for (gsize i = 0; i < G_N_ELEMENTS (unit_words); i++) {
    const gsize n = strlen (unit_words[i].word);

    if (length > n + 1 && words[length - n - 1] == ' ' &&
        g_str_equal (words + length - n, unit_words[i].word))
    {
      heading->unit = unit_words[i].unit;
      heading->units = unit_words[i].units;
      words[length - n - 1] = '\0';
      return;
    }
  }
}

/* The rank of @name among @names, -1 for none. */
static int
rank_of (const char *names, const char *name)
{
  const gsize length = strlen (name);
  const char *at = names;

  for (int rank = 0;; rank++) {
    const gsize n = strcspn (at, "|");

    if (n == length && strncmp (at, name, n) == 0)
      return rank;
    if (at[n] == '\0')
      return -1;
    at += n + 1;
  }
}

static gboolean
find_name (const char *name, LbHeading *heading)
{
  for (gsize i = 0; i < G_N_ELEMENTS (fact_names); i++) {
    const int rank = rank_of (fact_names[i].names, name);

    if (rank >= 0) {
      heading->fact = fact_names[i].fact;
      heading->rank = (guint) rank;
      return TRUE;
    }
  }

  return FALSE;
}

/* "Pile width", "x coordinate": the word that adds nothing is left out. */
static const char *
without_padding (char *words)
{
  static const char *const tails[] = { " coordinate", " coord" };

  for (gsize i = 0; i < G_N_ELEMENTS (tails); i++) {
    if (g_str_has_suffix (words, tails[i]))
      words[strlen (words) - strlen (tails[i])] = '\0';
  }

  return g_str_has_prefix (words, "pile ") ? words + strlen ("pile ") : words;
}

gboolean
lb_heading_read (const char *text, LbHeading *out)
{
  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  g_autofree char *words = plain_words (text);
  LbHeading heading = { .unit = "", .units = LB_UNITS_METRIC };

  /* A name that ends like a unit ("no in") is tried whole first. */
  if (!find_name (words, &heading)) {
    take_unit (words, &heading);
    if (!find_name (words, &heading) && !find_name (without_padding (words), &heading))
      return FALSE;
  }

  *out = heading;
  return TRUE;
}
