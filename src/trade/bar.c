/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sizes of steel found in piles, as printed in the standards, and how a size is recognised in
 * what a person writes.
 *
 * The table is constant; printed inches and pounds are turned into SI by exact factors in the
 * table itself, so that nobody has to trust a second set of digits.
 *
 * Invariants:
 * 1. Within a kind the sizes rise; between kinds the order is deformed, square, strand.
 * 2. Every name is found by lb_bar_find() and no two are found by the same text.
 */
#include "trade/bar.h"

#include "trade/msgid.h"
#include "trade/quantity.h"

#include <math.h>
#include <string.h>

/* Exact factors: NIST SP 811, appendix B. */
#define INCH        0.0254
#define POUND       0.45359237
#define FOOT        0.3048
#define POUND_FORCE (POUND * 9.80665)

/* ASTM A615/A615M, table 1: number, nominal diameter in, nominal area in2, lb/ft. */
#define DEFORMED(number, dia_in, area_in2, lb_ft)                               \
  {                                                                             \
    .name = "#" #number, .kind = LB_BAR_DEFORMED, .diameter_m = (dia_in) *INCH, \
    .area_m2 = (area_in2) *INCH * INCH, .mass_kg_per_m = (lb_ft) *POUND / FOOT, \
    .tag = LB_TAG_STANDARD, .source = N_ ("ASTM A615, table 1")                 \
  }

/* Plain geometry: the area is the side squared; 490 lb/ft3 of steel, which the A615 table keeps
 * to, is 3.4028 lb/ft for each square inch. From 1 in up the modern round bars #9, #10, #11, #14
 * and #18 were made equal in area to these. */
#define SQUARE(words, side_in)                                                             \
  {                                                                                        \
    .name = words " in sq", .kind = LB_BAR_SQUARE, .diameter_m = (side_in) *INCH,          \
    .area_m2 = (side_in) * (side_in) *INCH * INCH,                                         \
    .mass_kg_per_m = 3.4028 * (side_in) * (side_in) *POUND / FOOT, .tag = LB_TAG_COMPUTED, \
    .source = N_ ("side squared, steel at 490 lb/cu ft")                                   \
  }

/* ASTM A416/A416M tables: nominal diameter in, area in2, lb per 1000 ft, least breaking lb. */
#define STRAND(words, grade, dia_in, area_in2, lb_1000ft, break_lb, how, where)              \
  {                                                                                          \
    .name = words " in strand " #grade, .kind = LB_BAR_STRAND, .diameter_m = (dia_in) *INCH, \
    .area_m2 = (area_in2) *INCH * INCH, .mass_kg_per_m = (lb_1000ft) *POUND / (1000 * FOOT), \
    .break_force_n = (break_lb) *POUND_FORCE, .tag = how, .source = where                    \
  }

#define A416          LB_TAG_STANDARD, N_ ("ASTM A416-17")
#define A416_RECALLED LB_TAG_MEMORY, N_ ("ASTM A416, from memory")

/* The two together stand for the last two arguments of STRAND. */
#define STRAND_ROW(...) STRAND (__VA_ARGS__)

static const LbBar table[] = {
  DEFORMED (3, 0.375, 0.11, 0.376),
  DEFORMED (4, 0.500, 0.20, 0.668),
  DEFORMED (5, 0.625, 0.31, 1.043),
  DEFORMED (6, 0.750, 0.44, 1.502),
  DEFORMED (7, 0.875, 0.60, 2.044),
  DEFORMED (8, 1.000, 0.79, 2.670),
  DEFORMED (9, 1.128, 1.00, 3.400),
  DEFORMED (10, 1.270, 1.27, 4.303),
  DEFORMED (11, 1.410, 1.56, 5.313),
  DEFORMED (14, 1.693, 2.25, 7.65),
  DEFORMED (18, 2.257, 4.00, 13.60),

  SQUARE ("1/4", 0.25),
  SQUARE ("3/8", 0.375),
  SQUARE ("1/2", 0.5),
  SQUARE ("5/8", 0.625),
  SQUARE ("3/4", 0.75),
  SQUARE ("7/8", 0.875),
  SQUARE ("1", 1.0),
  SQUARE ("1-1/8", 1.125),
  SQUARE ("1-1/4", 1.25),
  SQUARE ("1-1/2", 1.5),
  SQUARE ("2", 2.0),

  STRAND_ROW ("1/4", 250, 0.250, 0.036, 122, 9000, A416_RECALLED),
  STRAND_ROW ("5/16", 250, 0.313, 0.058, 197, 14500, A416),
  STRAND_ROW ("3/8", 250, 0.375, 0.080, 272, 20000, A416),
  STRAND_ROW ("3/8", 270, 0.375, 0.085, 290, 23000, A416),
  STRAND_ROW ("7/16", 250, 0.438, 0.108, 367, 27000, A416),
  STRAND_ROW ("7/16", 270, 0.438, 0.115, 390, 31000, A416_RECALLED),
  STRAND_ROW ("1/2", 250, 0.500, 0.144, 490, 36000, A416),
  STRAND_ROW ("1/2", 270, 0.500, 0.153, 520, 41300, A416_RECALLED),
  STRAND_ROW ("0.52", 270, 0.520, 0.167, 570, 45000, A416_RECALLED),
  STRAND_ROW ("0.6", 250, 0.600, 0.216, 737, 54000, A416),
  STRAND_ROW ("0.6", 270, 0.600, 0.217, 740, 58600, A416_RECALLED),
};

/* How far a written size may lie from the printed one: 5/16 in is printed 0.313, and the two
 * closest strands are 0.02 in apart. */
#define SIZE_TOLERANCE (0.008 * INCH)

const LbBar *
lb_bar_table (gsize *out_n)
{
  if (out_n)
    *out_n = G_N_ELEMENTS (table);
  return table;
}

static const LbBar *
find_exact (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (table); i++) {
    if (g_ascii_strcasecmp (table[i].name, name) == 0)
      return &table[i];
  }
  return NULL;
}

/* Steps over @word at *@at, without case, and the spaces behind it. */
static gboolean
take_word (const char **at, const char *word)
{
  const gsize length = strlen (word);

  if (g_ascii_strncasecmp (*at, word, length) != 0)
    return FALSE;
  for (*at += length; g_ascii_isspace (**at); (*at)++)
    ;
  return TRUE;
}

/* "# 8", "no. 8", "8", "#8 bar" */
static const LbBar *
find_deformed (const char *text)
{
  const char *at = text;

  if (!take_word (&at, "#") && !take_word (&at, "number") && !take_word (&at, "no."))
    take_word (&at, "no");

  const gsize n_digits = strspn (at, "0123456789");

  if (n_digits == 0)
    return NULL;

  g_autofree char *name = g_strdup_printf ("#%.*s", (int) n_digits, at);

  for (at += n_digits; g_ascii_isspace (*at); at++)
    ;
  if (!take_word (&at, "bars"))
    take_word (&at, "bar");

  return *at == '\0' ? find_exact (name) : NULL;
}

static const LbBar *
find_by_size (LbBarKind kind, double diameter_m, const char *name_end)
{
  for (gsize i = 0; i < G_N_ELEMENTS (table); i++) {
    if (table[i].kind == kind && g_str_has_suffix (table[i].name, name_end) &&
        fabs (table[i].diameter_m - diameter_m) <= SIZE_TOLERANCE)
      return &table[i];
  }
  return NULL;
}

/* "1-1/4 sq", "1.25 in square", "1/2\" strand 270", "0.5 in strand grade 270" */
static const LbBar *
find_by_words (const char *text)
{
  const gsize n_size = strspn (text, "0123456789./,- ");
  g_autofree char *size = g_strndup (text, n_size);
  const char *at = text + n_size;
  double diameter_m;

  g_strstrip (size);
  if (!lb_quantity_from_text (LB_QUANTITY_SIZE, LB_UNITS_US, size, &diameter_m, NULL))
    return NULL;

  if (!take_word (&at, "inch") && !take_word (&at, "in.") && !take_word (&at, "in") &&
      !take_word (&at, "\""))
    take_word (&at, "″");

  if (take_word (&at, "square") || take_word (&at, "sq.") || take_word (&at, "sq")) {
    if (!take_word (&at, "bars"))
      take_word (&at, "bar");
    return *at == '\0' ? find_by_size (LB_BAR_SQUARE, diameter_m, "") : NULL;
  }

  if (take_word (&at, "strand")) {
    if (!take_word (&at, "grade"))
      take_word (&at, "gr");

    g_autofree char *grade = g_strndup (at, strspn (at, "0123456789"));

    for (at += strlen (grade); g_ascii_isspace (*at); at++)
      ;
    if (!take_word (&at, "ksi"))
      take_word (&at, "k");
    /* Without its grade a strand could be either: the name must say. */
    if (*at != '\0' || strlen (grade) != 3)
      return NULL;
    return find_by_size (LB_BAR_STRAND, diameter_m, grade);
  }

  return NULL;
}

const LbBar *
lb_bar_find (const char *name)
{
  g_return_val_if_fail (name, NULL);

  g_autofree char *text = g_strdup (name);

  g_strstrip (text);

  const LbBar *bar = find_exact (text);

  if (!bar)
    bar = find_deformed (text);
  return bar ? bar : find_by_words (text);
}
