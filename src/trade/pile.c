/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The facts of one pile by name: what each is called, how it is typed, how far it may go.
 *
 * A table holds, for each fact, its names, its quantity, its range and where in LbPile its number
 * lies; numbers of every kind then go one way through lb_quantity_from_text(). Texts, the shape,
 * the bar, the batter and the bearing have readers of their own.
 *
 * Invariants:
 * 1. A pile that lb_pile_set() refused to change is bit for bit what it was.
 * 2. What lb_pile_get() writes, lb_pile_set() in the same units reads back to the same value.
 * 3. Facts are checked one by one here; whether they agree is told in pile-check.c.
 */
#include "trade/pile.h"

#include "trade/bar-layout.h"
#include "trade/msgid.h"
#include "trade/trade-error.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* Exact: NIST SP 811, appendix B. */
#define FOOT 0.3048
#define INCH 0.0254

typedef enum {
  FORM_NAME,   /* a short text on one line */
  FORM_NOTE,   /* a long text */
  FORM_NUMBER, /* a double in the row's quantity */
  FORM_SHAPE,
  FORM_BAR,
  FORM_LAYOUT,
  FORM_COUNT,
  FORM_BATTER,
  FORM_BEARING,
  FORM_CONCRETE,
  FORM_BARS,
  FORM_ORDER,
  FORM_REMOVAL,
} Form;

typedef struct
{
  const char *name;
  const char *title; /* msgid */
  Form form;
  LbQuantity quantity;
  gsize offset;       /* of the member in LbPile */
  double least, most; /* SI; of texts, @most is the longest in characters */
  double unknown;     /* what "" sets */
} Row;

#define AT(member) offsetof (LbPile, member)
#define NAME(key, words, member, longest)                                                  \
  {                                                                                        \
    .name = key, .title = words, .form = FORM_NAME, .offset = AT (member), .most = longest \
  }
/* Survey grids run to some 1e7 m; elevations lie within 1 km of the datum. */
#define PLACE(key, words, member)                                                     \
  {                                                                                   \
    .name = key, .title = words, .form = FORM_NUMBER, .quantity = LB_QUANTITY_LENGTH, \
    .offset = AT (member), .least = -1e8, .most = 1e8, .unknown = (double) NAN        \
  }
#define ELEVATION(key, words, member)                                                 \
  {                                                                                   \
    .name = key, .title = words, .form = FORM_NUMBER, .quantity = LB_QUANTITY_LENGTH, \
    .offset = AT (member), .least = -1000, .most = 1000, .unknown = (double) NAN      \
  }
#define SIZE(key, words, member, from, to, none)                                    \
  {                                                                                 \
    .name = key, .title = words, .form = FORM_NUMBER, .quantity = LB_QUANTITY_SIZE, \
    .offset = AT (member), .least = from, .most = to, .unknown = none               \
  }

static const Row table[LB_N_FACTS] = {
  [LB_FACT_MARK] = NAME ("mark", N_ ("Mark"), mark, 40),
  [LB_FACT_BENT] = NAME ("bent", N_ ("Bent"), bent, 40),
  [LB_FACT_ROW] = NAME ("row", N_ ("Row"), row, 40),
  [LB_FACT_NOTE] = { .name = "note",
                     .title = N_ ("Note"),
                     .form = FORM_NOTE,
                     .offset = AT (note),
                     .most = 2000 },
  [LB_FACT_X] = PLACE ("x", N_ ("East"), x_m),
  [LB_FACT_Y] = PLACE ("y", N_ ("North"), y_m),
  [LB_FACT_SHAPE] = { .name = "shape", .title = N_ ("Shape"), .form = FORM_SHAPE },
  [LB_FACT_WIDTH] = SIZE ("width", N_ ("Width"), outline.width_m, 4 * INCH, 20 * FOOT, 0),
  [LB_FACT_TIP_WIDTH] =
    SIZE ("tip width", N_ ("Width at the toe"), tip_width_m, 4 * INCH, 20 * FOOT, (double) NAN),
  [LB_FACT_VOID] = SIZE ("void", N_ ("Void diameter"), outline.void_m, 0, 20 * FOOT, 0),
  [LB_FACT_BAR] = { .name = "bar", .title = N_ ("Bar size"), .form = FORM_BAR },
  [LB_FACT_N_BARS] = { .name = "bars",
                       .title = N_ ("Number of bars"),
                       .form = FORM_COUNT,
                       .most = LB_BARS_MAX },
  [LB_FACT_BAR_INSET] =
    SIZE ("bar inset", N_ ("Bar inset"), bar_inset_m, 0.5 * INCH, 10 * FOOT, (double) NAN),
  [LB_FACT_BAR_PLACES] = { .name = "bar places", .title = N_ ("Bar places"), .form = FORM_LAYOUT },
  [LB_FACT_BATTER] = { .name = "batter", .title = N_ ("Batter"), .form = FORM_BATTER },
  [LB_FACT_BEARING] = { .name = "bearing",
                        .title = N_ ("Bearing"),
                        .form = FORM_BEARING,
                        .quantity = LB_QUANTITY_ANGLE },
  [LB_FACT_HEAD] = ELEVATION ("head", N_ ("Head elevation"), head_m),
  [LB_FACT_CUT] = ELEVATION ("cut", N_ ("Cut elevation"), cut_m),
  [LB_FACT_MUDLINE] = ELEVATION ("mudline", N_ ("Mudline elevation"), mudline_m),
  [LB_FACT_TOE] = ELEVATION ("toe", N_ ("Toe elevation"), toe_m),
  [LB_FACT_CONCRETE] = { .name = "concrete left",
                         .title = N_ ("Concrete left in the cut"),
                         .form = FORM_CONCRETE },
  [LB_FACT_PINNED] = { .name = "kept bars",
                       .title = N_ ("Bars kept to the end"),
                       .form = FORM_BARS },
  [LB_FACT_ORDER] = { .name = "burning order",
                      .title = N_ ("Order of burning"),
                      .form = FORM_ORDER,
                      .offset = AT (order) },
  [LB_FACT_REMOVAL] = { .name = "removal", .title = N_ ("Removal"), .form = FORM_REMOVAL },
};

#define SAID(fact)    (1u << (fact))
#define LEAN_OR_SHAPE (SAID (LB_FACT_SHAPE) | SAID (LB_FACT_BATTER) | SAID (LB_FACT_BEARING))

static void *
member_of (LbPile *pile, const Row *row)
{
  return (char *) pile + row->offset;
}

static const void *
member_of_const (const LbPile *pile, const Row *row)
{
  return (const char *) pile + row->offset;
}

const char *
lb_fact_name (LbFact fact)
{
  g_return_val_if_fail (fact < LB_N_FACTS, NULL);

  return table[fact].name;
}

const char *
lb_fact_title (LbFact fact)
{
  g_return_val_if_fail (fact < LB_N_FACTS, NULL);

  return table[fact].title;
}

gboolean
lb_fact_from_name (const char *name, LbFact *out_fact)
{
  g_return_val_if_fail (name, FALSE);
  g_return_val_if_fail (out_fact, FALSE);

  /* "bar-inset" and "bar_inset" are what shells and spreadsheets make of "bar inset". */
  g_autofree char *key = g_strdelimit (g_strdup (name), "-_", ' ');

  for (int fact = 0; fact < LB_N_FACTS; fact++) {
    if (g_ascii_strcasecmp (table[fact].name, key) == 0) {
      *out_fact = (LbFact) fact;
      return TRUE;
    }
  }
  return FALSE;
}

LbQuantity
lb_fact_quantity (LbFact fact)
{
  g_return_val_if_fail (fact < LB_N_FACTS, LB_QUANTITY_COUNT);

  return table[fact].quantity;
}

void
lb_pile_init (LbPile *pile)
{
  g_return_if_fail (pile);

  const double unknown = (double) NAN;

  *pile = (LbPile){
    .id = "",
    .mark = "",
    .bent = "",
    .row = "",
    .note = "",
    .x_m = unknown,
    .y_m = unknown,
    .outline = { .shape = LB_SHAPE_SQUARE },
    .tip_width_m = unknown,
    .bar_inset_m = unknown,
    .bar_places = "",
    .head_m = unknown,
    .cut_m = unknown,
    .mudline_m = unknown,
    .toe_m = unknown,
    .order = LB_ORDER_BEST,
    .unsaid = LEAN_OR_SHAPE,
  };
}

const char *
lb_removal_name (gboolean is_to_be_drawn)
{
  return is_to_be_drawn ? N_ ("drawn whole") : N_ ("cut off");
}

gboolean
lb_pile_says (const LbPile *pile, LbFact fact)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (fact < LB_N_FACTS, FALSE);

  const gboolean needs_side = !(pile->unsaid & SAID (LB_FACT_BATTER)) && pile->batter > 0;

  return !(pile->unsaid & SAID (fact)) || (fact == LB_FACT_BEARING && !needs_side);
}

/* --- Reading one fact --------------------------------------------------------------------- */

static gboolean
check_text (const Row *row, const char *text, GError **error)
{
  if (!g_utf8_validate (text, -1, NULL)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: the text is not UTF-8; save the file as UTF-8", row->title);
    return FALSE;
  }
  if (g_utf8_strlen (text, -1) > (glong) row->most) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: longer than %.0f characters; shorten it", row->title, row->most);
    return FALSE;
  }
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at)) {
    const gboolean is_break = *at == '\n' || *at == '\t';

    if (g_unichar_iscntrl (g_utf8_get_char (at)) && !(is_break && row->form == FORM_NOTE)) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                   "%s: “%s” holds a line break or a control character; take it out", row->title,
                   text);
      return FALSE;
    }
  }
  if (row == &table[LB_FACT_MARK] && text[0] == '\0') {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                 "%s: a pile needs one; write what the crew calls it", row->title);
    return FALSE;
  }
  return TRUE;
}

static gboolean
read_number (const Row *row, LbUnits units, const char *text, double *out_si, GError **error)
{
  double si = row->unknown;

  if (text[0] == '\0' && (row == &table[LB_FACT_X] || row == &table[LB_FACT_Y])) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                 "%s: a pile needs a place on the job's grid; write a distance", row->title);
    return FALSE;
  }
  if (text[0] != '\0' && !lb_quantity_from_text (row->quantity, units, text, &si, error)) {
    g_prefix_error (error, "%s: ", row->title);
    return FALSE;
  }
  /* A hair of slack: the ends were converted too. */
  if (text[0] != '\0' && !(si >= row->least - 1e-9 && si <= row->most + 1e-9)) {
    g_autofree char *least = lb_quantity_to_text (row->quantity, units, row->least,
                                                  &LB_NUMBER_PLAIN);
    g_autofree char *most = lb_quantity_to_text (row->quantity, units, row->most, &LB_NUMBER_PLAIN);

    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: “%s” is outside %s to %s; check the number and its unit", row->title, text,
                 least, most);
    return FALSE;
  }

  *out_si = si;
  return TRUE;
}

static gboolean
read_count (const Row *row, const char *text, guint *out_count, GError **error)
{
  double count = 0;

  if (text[0] != '\0' &&
      (!lb_quantity_from_text (LB_QUANTITY_COUNT, LB_UNITS_METRIC, text, &count, NULL) ||
       !(count >= 0 && count <= row->most) || fabs (count - round (count)) > 0))
  {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: “%s” is not a whole number from 0 to %.0f", row->title, text, row->most);
    return FALSE;
  }

  *out_count = (guint) count;
  return TRUE;
}

static gboolean
read_bar (const Row *row, const char *text, const LbBar **out_bar, GError **error)
{
  const LbBar *bar = text[0] != '\0' ? lb_bar_find (text) : NULL;

  if (text[0] != '\0' && !bar) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 "%s: “%s” is not in the table; write #8, 1 in sq or 1/2 in strand 270", row->title,
                 text);
    return FALSE;
  }

  *out_bar = bar;
  return TRUE;
}

/* The same in metric. */
static char *
read_layout (const Row *row, LbUnits units, const char *text, GError **error)
{
  LbBarLayout layout;

  if (lb_bar_layout_from_text (text, units, &layout, error))
    return lb_bar_layout_to_text (&layout, LB_UNITS_METRIC);

  g_prefix_error (error, "%s: ", row->title);
  return NULL;
}

static gboolean
read_shape (const Row *row, const char *text, LbShape *out_shape, GError **error)
{
  if (text[0] == '\0') {
    *out_shape = LB_SHAPE_SQUARE;
    return TRUE;
  }
  if (lb_shape_from_name (text, out_shape))
    return TRUE;

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               "%s: “%s” is no shape; write square, octagonal or round", row->title, text);
  return FALSE;
}

static gboolean
read_bearing (const Row *row, const char *text, double *out_rad, GError **error)
{
  if (text[0] == '\0') {
    *out_rad = 0;
    return TRUE;
  }
  if (lb_bearing_from_text (text, out_rad, error))
    return TRUE;

  g_prefix_error (error, "%s: ", row->title);
  return FALSE;
}

static gboolean
read_batter (const Row *row, const char *text, double *out_batter, GError **error)
{
  if (lb_batter_from_text (text, out_batter, error))
    return TRUE;

  g_prefix_error (error, "%s: ", row->title);
  return FALSE;
}

gboolean
lb_bar_numbers_from_text (const char *text,
                          guint8 out_bars[LB_BARS_MAX],
                          gsize *out_n,
                          GError **error)
{
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (out_bars, FALSE);
  g_return_val_if_fail (out_n, FALSE);

  g_auto (GStrv) parts = g_strsplit (text, ",", -1);
  guint8 bars[LB_BARS_MAX];
  LbBarSet seen = 0;
  gsize n = 0;

  for (char **part = parts; *part; part++) {
    g_auto (GStrv) ends = g_strsplit (g_strstrip (*part), "-", 2);
    guint64 from = 0, to = 0;
    gboolean is_good = ends[0] &&
                       g_ascii_string_to_unsigned (ends[0], 10, 1, LB_BARS_MAX, &from, NULL) &&
                       g_ascii_string_to_unsigned (ends[1] ? ends[1] : ends[0], 10, from,
                                                   LB_BARS_MAX, &to, NULL);

    for (guint64 bar = from; is_good && bar <= to; bar++) {
      is_good = !(seen & LB_BAR (bar - 1));
      seen |= LB_BAR (bar - 1);
      if (is_good)
        bars[n++] = (guint8) (bar - 1);
    }
    if (!is_good) {
      g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                   "“%s” are no bars: write each number from 1 to %d once, as 1, 2, 5 or 1-4", text,
                   LB_BARS_MAX);
      return FALSE;
    }
  }

  memcpy (out_bars, bars, n);
  *out_n = n;
  return TRUE;
}

static gboolean
read_concrete (const Row *row, const char *text, LbConcreteLeft *out_left, GError **error)
{
  if (text[0] == '\0') {
    *out_left = LB_CONCRETE_NONE;
    return TRUE;
  }
  if (lb_concrete_left_from_name (text, out_left))
    return TRUE;

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               "%s: write none, core or one side, not “%s”", row->title, text);
  return FALSE;
}

static gboolean
read_bars (const Row *row, const char *text, LbBarSet *out_set, GError **error)
{
  guint8 bars[LB_BARS_MAX];
  LbBarSet set = 0;
  gsize n = 0;

  if (text[0] != '\0' && !lb_bar_numbers_from_text (text, bars, &n, error)) {
    g_prefix_error (error, "%s: ", row->title);
    return FALSE;
  }
  for (gsize i = 0; i < n; i++)
    set |= LB_BAR (bars[i]);

  *out_set = set;
  return TRUE;
}

static gboolean
check_order (const Row *row, const char *text, GError **error)
{
  guint8 bars[LB_BARS_MAX];
  gsize n;

  if (text[0] == '\0' || g_ascii_strcasecmp (text, LB_ORDER_HIGH_SIDE) == 0 ||
      lb_bar_numbers_from_text (text, bars, &n, error))
    return TRUE;

  g_prefix_error (error, "%s: ", row->title);
  return FALSE;
}

static gboolean
read_removal (const Row *row, const char *text, gboolean *out_is_to_be_drawn, GError **error)
{
  const gboolean is_to_be_drawn = g_ascii_strcasecmp (text, lb_removal_name (TRUE)) == 0;

  if (is_to_be_drawn || text[0] == '\0' || g_ascii_strcasecmp (text, lb_removal_name (FALSE)) == 0)
  {
    *out_is_to_be_drawn = is_to_be_drawn;
    return TRUE;
  }

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
               "%s: write cut off or drawn whole, not “%s”", row->title, text);
  return FALSE;
}

/* @text without spaces round it. */
static gboolean
set_stripped (LbPile *pile,
              const Row *row,
              const char *stripped,
              LbUnits units,
              const char *(*dup) (gpointer pool, const char *text),
              gpointer pool,
              GError **error)
{
  switch (row->form) {
  case FORM_NAME:
  case FORM_NOTE:
    if (!check_text (row, stripped, error))
      return FALSE;
    *(const char **) member_of (pile, row) = dup (pool, stripped);
    return TRUE;
  case FORM_NUMBER:
    return read_number (row, units, stripped, member_of (pile, row), error);
  case FORM_SHAPE:
    return read_shape (row, stripped, &pile->outline.shape, error);
  case FORM_BAR:
    return read_bar (row, stripped, &pile->bar, error);
  case FORM_LAYOUT: {
    g_autofree char *metric = read_layout (row, units, stripped, error);

    if (!metric)
      return FALSE;
    pile->bar_places = dup (pool, metric);
    return TRUE;
  }
  case FORM_COUNT:
    return read_count (row, stripped, &pile->n_bars, error);
  case FORM_BATTER:
    return read_batter (row, stripped, &pile->batter, error);
  case FORM_BEARING:
    return read_bearing (row, stripped, &pile->bearing_rad, error);
  case FORM_CONCRETE:
    return read_concrete (row, stripped, &pile->concrete, error);
  case FORM_BARS:
    return read_bars (row, stripped, &pile->pinned, error);
  case FORM_ORDER:
    if (!check_order (row, stripped, error))
      return FALSE;
    pile->order = dup (pool, stripped);
    return TRUE;
  case FORM_REMOVAL:
    return read_removal (row, stripped, &pile->is_to_be_drawn, error);
  default:
    g_return_val_if_reached (FALSE);
  }
}

gboolean
lb_pile_set (LbPile *pile,
             LbFact fact,
             const char *text,
             LbUnits units,
             const char *(*dup) (gpointer pool, const char *text),
             gpointer pool,
             GError **error)
{
  g_return_val_if_fail (pile, FALSE);
  g_return_val_if_fail (fact < LB_N_FACTS, FALSE);
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (dup, FALSE);

  g_autofree char *stripped = g_strstrip (g_strdup (text));

  if (!set_stripped (pile, &table[fact], stripped, units, dup, pool, error))
    return FALSE;
  if (SAID (fact) & LEAN_OR_SHAPE) {
    if (stripped[0] == '\0')
      pile->unsaid |= SAID (fact);
    else
      pile->unsaid &= ~SAID (fact);
  }
  return TRUE;
}

/* --- Writing one fact --------------------------------------------------------------------- */

/* The fewest decimals that read back as the same SI value: 7.3152 m is "24" ft, not
 * "24.000000000000004". */
static char *
number_to_text (LbQuantity quantity, LbUnits units, double si)
{
  const double shown = lb_quantity_from_si (quantity, units, si);

  for (int decimals = 0; decimals <= 17; decimals++) {
    g_autofree char *text = lb_number_to_text (shown, decimals, &LB_NUMBER_PLAIN);

    if (lb_quantity_to_si (quantity, units, g_ascii_strtod (text, NULL)) == si)
      return g_steal_pointer (&text);
  }
  return lb_number_to_text (shown, -1, &LB_NUMBER_PLAIN);
}

/* As lb_batter_to_text(), with as many decimals as the batter needs to come back the same. */
static char *
batter_to_text (double batter)
{
  for (int decimals = 0; decimals <= 17 && batter > 0; decimals++) {
    g_autofree char *rise = lb_number_to_text (1 / batter, decimals, &LB_NUMBER_PLAIN);

    if (1 / g_ascii_strtod (rise, NULL) == batter)
      return g_strconcat ("1:", rise, NULL);
  }
  return lb_batter_to_text (batter);
}

static char *
layout_to_text (const LbPile *pile, LbUnits units)
{
  LbBarLayout layout;

  if (!lb_bar_layout_from_text (pile->bar_places, LB_UNITS_METRIC, &layout, NULL))
    return g_strdup (pile->bar_places);
  return lb_bar_layout_to_text (&layout, units);
}

static char *
bars_to_text (LbBarSet bars)
{
  GString *text = g_string_new (NULL);

  for (guint bar = 0; bar < LB_BARS_MAX; bar++)
    if (bars & LB_BAR (bar))
      g_string_append_printf (text, "%s%u", text->len > 0 ? ", " : "", bar + 1);
  return g_string_free (text, FALSE);
}

char *
lb_pile_get (const LbPile *pile, LbFact fact, LbUnits units)
{
  g_return_val_if_fail (pile, NULL);
  g_return_val_if_fail (fact < LB_N_FACTS, NULL);

  const Row *row = &table[fact];

  if (pile->unsaid & SAID (fact))
    return g_strdup ("");
  switch (row->form) {
  case FORM_NAME:
  case FORM_NOTE:
    return g_strdup (*(const char *const *) member_of_const (pile, row));
  case FORM_NUMBER: {
    const double si = *(const double *) member_of_const (pile, row);
    const gboolean is_unknown = isnan (si) || (fact == LB_FACT_WIDTH && !(si > 0));

    return is_unknown ? g_strdup ("") : number_to_text (row->quantity, units, si);
  }
  case FORM_SHAPE:
    return g_strdup (lb_shape_name (pile->outline.shape));
  case FORM_BAR:
    return g_strdup (pile->bar ? pile->bar->name : "");
  case FORM_LAYOUT:
    return layout_to_text (pile, units);
  case FORM_COUNT:
    return pile->n_bars == 0 ? g_strdup ("") : g_strdup_printf ("%u", pile->n_bars);
  case FORM_BATTER:
    return batter_to_text (pile->batter);
  case FORM_BEARING:
    return number_to_text (LB_QUANTITY_ANGLE, units, pile->bearing_rad);
  case FORM_CONCRETE:
    return g_strdup (lb_concrete_left_name (pile->concrete));
  case FORM_BARS:
    return bars_to_text (pile->pinned);
  case FORM_ORDER:
    return g_strdup (pile->order);
  case FORM_REMOVAL:
    return g_strdup (lb_removal_name (pile->is_to_be_drawn));
  default:
    g_return_val_if_reached (NULL);
  }
}
