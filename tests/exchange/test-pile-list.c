/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A survey's list, from its cells to piles: what is guessed, what is read, what is said of bad rows. */
#include "book/ledger.h"
#include "exchange/exchange-error.h"
#include "exchange/heading.h"
#include "exchange/pile-list.h"

#include <math.h>
#include <string.h>

#define FOOT 0.3048
#define INCH 0.0254

typedef struct
{
  LbTextTable *table;
  LbPileListMap map;
  LbPileListRows *rows;
} List;

static void
list_clear (List *list)
{
  g_clear_pointer (&list->rows, lb_pile_list_rows_free);
  g_clear_pointer (&list->table, lb_text_table_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (List, list_clear)

static void
guess (List *list, const char *text, LbUnits units)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (GError) error = NULL;

  list->table = lb_text_table_parse (bytes, NULL, &error);
  g_assert_no_error (error);
  lb_pile_list_guess (list->table, units, &list->map);
}

static void
read_list (List *list, const char *text, LbUnits units)
{
  g_autoptr (GError) error = NULL;
  LbPile defaults;

  guess (list, text, units);
  lb_pile_init (&defaults);
  list->rows = lb_pile_list_read (list->table, &list->map, &defaults, NULL, NULL, NULL, NULL,
                                  &error);
  g_assert_no_error (error);
}

static const LbPile *
pile (const List *list, guint i)
{
  g_assert_cmpuint (i, <, list->rows->piles->len);
  return &g_array_index (list->rows->piles, LbPile, i);
}

static void
assert_fault (const List *list, guint i, gsize line, const char *column, const char *said)
{
  g_assert_cmpuint (i, <, list->rows->faults->len);
  const LbPileListFault *fault = g_ptr_array_index (list->rows->faults, i);

  g_assert_cmpuint (fault->line, ==, line);
  g_assert_cmpstr (fault->column, ==, column);
  if (strstr (fault->reason, said) == NULL)
    g_error ("“%s” does not say “%s”", fault->reason, said);
}

/* --- Headings ------------------------------------------------------------------------------ */

static const struct
{
  const char *text;
  LbFact fact;
  const char *unit;
} headings[] = {
  { "Point", LB_FACT_MARK, "" },
  { "PILE NO.", LB_FACT_MARK, "" },
  { "mark", LB_FACT_MARK, "" },
  { "Northing (ft)", LB_FACT_Y, "ft" },
  { "N", LB_FACT_Y, "" },
  { "Y_m", LB_FACT_Y, "m" },
  { "Easting [m]", LB_FACT_X, "m" },
  { "X coordinate", LB_FACT_X, "" },
  { "elev.", LB_FACT_HEAD, "" },
  { "Cut-off elevation (US ft)", LB_FACT_HEAD, "ft" },
  { "cut", LB_FACT_CUT, "" },
  { "Mudline, m", LB_FACT_MUDLINE, "m" },
  { "tip_elev", LB_FACT_TOE, "" },
  { "Pile width (in)", LB_FACT_WIDTH, "in" },
  { "width_mm", LB_FACT_WIDTH, "mm" },
  { "No. of bars", LB_FACT_N_BARS, "" },
  { "Bar size", LB_FACT_BAR, "" },
  { "bar inset", LB_FACT_BAR_INSET, "" },
  { "Rake", LB_FACT_BATTER, "" },
  { "Batter angle (°)", LB_FACT_BATTER, "deg" },
  { "Azimuth (deg)", LB_FACT_BEARING, "deg" },
  { "Description", LB_FACT_NOTE, "" },
};

static void
test_headings (void)
{
  LbHeading heading;

  for (gsize i = 0; i < G_N_ELEMENTS (headings); i++) {
    g_test_message ("%s", headings[i].text);
    g_assert_true (lb_heading_read (headings[i].text, &heading));
    g_assert_cmpint (heading.fact, ==, headings[i].fact);
    g_assert_cmpstr (heading.unit, ==, headings[i].unit);
  }
  g_assert_false (lb_heading_read ("colour", &heading));
  g_assert_false (lb_heading_read ("", &heading));
  g_assert_false (lb_heading_read ("(ft)", &heading));
}

/* Every fact's own name is known, so that our own lists come back. */
static void
test_fact_names (void)
{
  for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
    g_autofree char *with_unit = g_strconcat (lb_fact_name (fact), " (ft)", NULL);
    LbHeading heading;

    g_test_message ("%s", lb_fact_name (fact));
    g_assert_true (lb_heading_read (with_unit, &heading));
    /* "bars" may head a count or sizes: the values tell. */
    if (fact != LB_FACT_N_BARS)
      g_assert_cmpint (heading.fact, ==, fact);
  }
}

static void
test_better_name_wins (void)
{
  g_auto (List) list = { 0 };

  guess (&list, "Point,Mark,X,Y,Elevation,Head\n17,A1,1,2,3,4\n", LB_UNITS_METRIC);
  g_assert_true (list.map.has_heading);
  g_assert_cmpint (list.map.column_of[LB_FACT_MARK], ==, 1);
  g_assert_cmpint (list.map.column_of[LB_FACT_HEAD], ==, 5);
  g_assert_cmpint (list.map.column_of[LB_FACT_TOE], ==, LB_COLUMN_NONE);
}

/* --- Order of columns --------------------------------------------------------------------- */

static void
test_headless (void)
{
  g_auto (List) five = { 0 }, four = { 0 }, three = { 0 }, foreign = { 0 };

  read_list (&five, "1,1000.000,5000.000,2.150,PILE A1\n2,1004.000,5012.500,2.140,PILE B2\n",
             LB_UNITS_METRIC);
  g_assert_false (five.map.has_heading);
  g_assert_cmpuint (five.rows->piles->len, ==, 2);
  g_assert_cmpstr (pile (&five, 1)->mark, ==, "2");
  g_assert_cmpfloat (pile (&five, 1)->y_m, ==, 1004.0);
  g_assert_cmpfloat (pile (&five, 1)->x_m, ==, 5012.5);
  g_assert_cmpfloat (pile (&five, 1)->head_m, ==, 2.14);
  g_assert_cmpstr (pile (&five, 1)->note, ==, "PILE B2");

  read_list (&four, "1000.0,5000.0,2.1,A1\n1004.0,5012.5,2.1,B2\n", LB_UNITS_METRIC);
  g_assert_cmpstr (pile (&four, 0)->mark, ==, "A1");
  g_assert_cmpfloat (pile (&four, 0)->x_m, ==, 5000.0);

  read_list (&three, "7,10.5,20.5\n", LB_UNITS_METRIC);
  g_assert_cmpstr (pile (&three, 0)->mark, ==, "7");
  g_assert_cmpfloat (pile (&three, 0)->y_m, ==, 10.5);

  /* Headings in a language not known here: seen to be headings, mapped by a person. */
  guess (&foreign, "Pfahl;Rechts;Hoch\nA1;1,5;2,5\n", LB_UNITS_METRIC);
  g_assert_true (foreign.map.has_heading);
  g_assert_cmpint (foreign.map.column_of[LB_FACT_MARK], ==, LB_COLUMN_NONE);
}

static void
test_fixture_file (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "tests", "exchange", "data",
                                            "pnezd.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (List) list = { 0 };

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  read_list (&list, text, LB_UNITS_METRIC);
  g_assert_cmpuint (list.rows->faults->len, ==, 0);
  g_assert_cmpstr (pile (&list, 0)->note, ==, "PILE A1");
  g_assert_cmpfloat (pile (&list, 0)->y_m, ==, 1000);
}

/* --- Values -------------------------------------------------------------------------------- */

static void
test_every_fact (void)
{
  g_auto (List) list = { 0 };
  const LbPile *read;

  read_list (&list,
             "mark,bent,row,E (ft),N (ft),shape,width (in),bar size,no of bars,batter,bearing,"
             "head,mudline,tip,note\n"
             "G7,7,G,100,200.5,octagonal,16,#8,8,1:4,N 45 E,5.5,-33,-55,\"said \"\"old\"\"\"\n",
             LB_UNITS_US);
  read = pile (&list, 0);
  g_assert_cmpstr (read->mark, ==, "G7");
  g_assert_cmpstr (read->bent, ==, "7");
  g_assert_cmpstr (read->row, ==, "G");
  g_assert_cmpstr (read->note, ==, "said \"old\"");
  g_assert_cmpfloat_with_epsilon (read->x_m, 100 * FOOT, 1e-9);
  g_assert_cmpfloat_with_epsilon (read->y_m, 200.5 * FOOT, 1e-9);
  g_assert_cmpint (read->outline.shape, ==, LB_SHAPE_OCTAGON);
  g_assert_cmpfloat_with_epsilon (read->outline.width_m, 16 * INCH, 1e-12);
  g_assert_cmpstr (read->bar->name, ==, "#8");
  g_assert_cmpuint (read->n_bars, ==, 8);
  g_assert_cmpfloat (read->batter, ==, 0.25);
  g_assert_cmpfloat_with_epsilon (read->bearing_rad, G_PI / 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (read->mudline_m, -33 * FOOT, 1e-9);
  g_assert_cmpfloat_with_epsilon (read->toe_m, -55 * FOOT, 1e-9);
  g_assert_true (isnan (read->cut_m));
}

typedef struct
{
  const char *name;
  const char *text;
  LbUnits units;
  double x_m; /* of the first pile */
} Number;

static const Number numbers[] = {
  { "point", "mark,x,y\nA,1234.5,1\n", LB_UNITS_METRIC, 1234.5 },
  { "comma", "mark;x;y\nA;1234,5;1\n", LB_UNITS_METRIC, 1234.5 },
  { "comma-in-feet", "mark;x;y\nA;1000,250;1,5\n", LB_UNITS_US, 1000.25 * FOOT },
  { "both-comma-last", "mark;x;y\nA;1.234,56;1\n", LB_UNITS_METRIC, 1234.56 },
  { "both-point-last", "mark;x;y\nA;1,234.56;1\n", LB_UNITS_METRIC, 1234.56 },
  { "doubtful-told-by-another", "mark;x;y\nA;1.234;5,25\n", LB_UNITS_METRIC, 1234 },
  { "doubtful-comma-groups", "mark;x;y\nA;1,234;5.25\n", LB_UNITS_US, 1234 * FOOT },
  { "doubtful-comma-decimal", "mark;x;y\nA;1,234;5,25\n", LB_UNITS_US, 1.234 * FOOT },
  { "doubtful-point-untold", "mark;x;y\nA;2.150;3.250\n", LB_UNITS_METRIC, 2.15 },
  { "grouping-blank", "mark;x;y\nA;5 012,50;1\n", LB_UNITS_METRIC, 5012.5 },
  { "grouping-no-break", "mark;x;y\nA;5\u00a0012,50;1\n", LB_UNITS_METRIC, 5012.5 },
  { "minus", "mark,x,y\nA,-12.5,1\n", LB_UNITS_METRIC, -12.5 },
  { "own-unit", "mark,x,y\nA,10 ft,1\n", LB_UNITS_METRIC, 10 * FOOT },
  { "heading-unit-round", "mark,x (ft),y\nA,10,1\n", LB_UNITS_METRIC, 10 * FOOT },
  { "heading-unit-underscore", "mark,x_m,y_m\nA,10,1\n", LB_UNITS_US, 10 },
  { "heading-unit-square", "mark,x [mm],y [mm]\nA,1250,1\n", LB_UNITS_US, 1.25 },
  { "heading-unit-cm", "mark,x cm,y cm\nA,125,1\n", LB_UNITS_US, 1.25 },
  { "feet-and-inches", "mark,x,y\nA,10' 6\",1\n", LB_UNITS_US, 10.5 * FOOT },
};

static void
test_number (gconstpointer data)
{
  const Number *number = data;
  g_auto (List) list = { 0 };

  read_list (&list, number->text, number->units);
  for (guint i = 0; i < list.rows->faults->len; i++)
    g_test_message ("%s", ((LbPileListFault *) g_ptr_array_index (list.rows->faults, i))->reason);
  g_assert_cmpfloat_with_epsilon (pile (&list, 0)->x_m, number->x_m, 1e-9);
}

/* In a list with both decimal signs a doubtful number is refused, and only that. */
static void
test_doubtful_number (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "mark;x;y\nA;1,5;2\nB;2.5;2\nC;1.234;2\nD;1.234,5;2\n", LB_UNITS_METRIC);
  g_assert_cmpuint (list.rows->piles->len, ==, 3);
  g_assert_cmpuint (list.rows->faults->len, ==, 1);
  assert_fault (&list, 0, 4, "x", "1.234");
}

/* A person who sets the units to metric is believed over the heading's feet. */
static void
test_units_set_by_hand (void)
{
  g_auto (List) list = { 0 };
  g_autoptr (GError) error = NULL;
  LbPile defaults;

  guess (&list, "mark,x (ft),y (ft)\nA,10,1\n", LB_UNITS_METRIC);
  g_assert_cmpint (list.map.units[LB_FACT_X], ==, LB_UNITS_US);
  list.map.units[LB_FACT_X] = LB_UNITS_METRIC;
  lb_pile_init (&defaults);
  list.rows = lb_pile_list_read (list.table, &list.map, &defaults, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (pile (&list, 0)->x_m, ==, 10);
}

static void
test_batters_and_bearings (void)
{
  g_auto (List) list = { 0 };

  read_list (&list,
             "mark,x,y,batter,bearing\n"
             "A,1,1,1:6,90\nB,1,1,6,N45E\nC,1,1,9.5°,SW\nD,1,1,,\nE,1,1,plumb,0\nF,1,1,0,S 30 W\n",
             LB_UNITS_METRIC);
  g_assert_cmpuint (list.rows->faults->len, ==, 0);
  g_assert_cmpfloat_with_epsilon (pile (&list, 0)->batter, 1.0 / 6, 1e-12);
  g_assert_cmpfloat_with_epsilon (pile (&list, 1)->batter, 1.0 / 6, 1e-12);
  g_assert_cmpfloat_with_epsilon (pile (&list, 2)->batter, tan (9.5 * G_PI / 180), 1e-12);
  g_assert_cmpfloat_with_epsilon (pile (&list, 2)->bearing_rad, 225 * G_PI / 180, 1e-12);
  g_assert_cmpfloat (pile (&list, 3)->batter, ==, 0);
  g_assert_cmpfloat_with_epsilon (pile (&list, 5)->bearing_rad, 210 * G_PI / 180, 1e-12);
}

/* Degrees, minutes and seconds in the ways surveyors write them. */
static void
test_bearing_forms (void)
{
  static const struct
  {
    const char *text;
    double degrees; /* NAN: refused */
  } forms[] = {
    { "N45°30'00\"E", 45.5 },
    { "N 45 30 E", 45.5 },
    { "S12-15-36W", 192.26 },
    { "N45°30′15″W", 314.49583333 },
    { "120°30'", 120.5 },
    { "45.5", 45.5 },
    { "45,5", 45.5 },
    { "SW", 225 },
    { "N45°75'E", (double) NAN },
    { "12 13 14 15", (double) NAN },
    { "N95E", (double) NAN },
    { "north by gum", (double) NAN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++) {
    g_auto (GStrv) parts = g_strsplit (forms[i].text, "\"", -1);
    g_autofree char *quoted = g_strjoinv ("\"\"", parts);
    g_autofree char *text = g_strdup_printf ("mark;x;y;bearing\nA;1;1;\"%s\"\n", quoted);
    g_auto (List) list = { 0 };

    g_test_message ("%s", forms[i].text);
    read_list (&list, text, LB_UNITS_METRIC);
    if (isnan (forms[i].degrees))
      assert_fault (&list, 0, 2, "bearing", "bearing");
    else
      g_assert_cmpfloat_with_epsilon (pile (&list, 0)->bearing_rad * 180 / G_PI, forms[i].degrees,
                                      1e-7);
  }
}

static void
test_degrees_by_heading (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "mark,x,y,batter (deg)\nA,1,1,9.5\n", LB_UNITS_METRIC);
  g_assert_cmpfloat_with_epsilon (pile (&list, 0)->batter, tan (9.5 * G_PI / 180), 1e-12);
}

static void
test_bars_in_one_cell (void)
{
  g_auto (List) joint = { 0 }, counted = { 0 };

  read_list (&joint, "mark,x,y,bars\nA,1,1,8 #8\nB,1,1,8-#9\nC,1,1,(4) x #18\nD,1,1,#6\n",
             LB_UNITS_US);
  g_assert_cmpuint (joint.rows->faults->len, ==, 0);
  g_assert_cmpuint (pile (&joint, 0)->n_bars, ==, 8);
  g_assert_cmpstr (pile (&joint, 1)->bar->name, ==, "#9");
  g_assert_cmpuint (pile (&joint, 2)->n_bars, ==, 4);
  g_assert_cmpuint (pile (&joint, 3)->n_bars, ==, 0);

  read_list (&counted, "mark,x,y,bars\nA,1,1,8\n", LB_UNITS_US);
  g_assert_cmpuint (pile (&counted, 0)->n_bars, ==, 8);
  g_assert_null (pile (&counted, 0)->bar);
}

static void
test_mark_of_row_and_bent (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "bent,row,x,y\n7,G,1,2\n8,G,3,4\n9,,5,6\n", LB_UNITS_METRIC);
  g_assert_cmpstr (pile (&list, 0)->mark, ==, "G7");
  g_assert_cmpstr (pile (&list, 1)->mark, ==, "G8");
  assert_fault (&list, 0, 4, "Mark", "empty");
}

static void
test_defaults (void)
{
  g_auto (List) list = { 0 };
  g_autoptr (GError) error = NULL;
  char note[] = "as drawn";
  LbPile defaults;

  guess (&list, "mark,x,y,width\nA,1,1,\nB,1,1,20\n", LB_UNITS_US);
  lb_pile_init (&defaults);
  defaults.outline = (LbOutline){ .shape = LB_SHAPE_OCTAGON, .width_m = 16 * INCH };
  defaults.note = note;
  list.rows = lb_pile_list_read (list.table, &list.map, &defaults, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  memset (note, 'x', strlen (note));

  g_assert_cmpfloat_with_epsilon (pile (&list, 0)->outline.width_m, 16 * INCH, 1e-12);
  g_assert_cmpfloat_with_epsilon (pile (&list, 1)->outline.width_m, 20 * INCH, 1e-12);
  g_assert_cmpint (pile (&list, 1)->outline.shape, ==, LB_SHAPE_OCTAGON);
  g_assert_cmpstr (pile (&list, 1)->note, ==, "as drawn");
}

/* The apostrophe that keeps text from being taken for a formula is ours to take off. */
static void
test_formula_guard (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "mark,x,y,note\nA,1,1,'=1+1\nB,1,1,'tis old\n", LB_UNITS_METRIC);
  g_assert_cmpstr (pile (&list, 0)->note, ==, "=1+1");
  g_assert_cmpstr (pile (&list, 1)->note, ==, "'tis old");
}

static void
test_line_breaks_in_notes (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "mark,x,y,note\r\nA,1,1,\"one\r\ntwo\rthree\"\r\n", LB_UNITS_METRIC);
  g_assert_cmpstr (pile (&list, 0)->note, ==, "one\ntwo\nthree");
}

/* --- Faults -------------------------------------------------------------------------------- */

static void
test_bad_rows (void)
{
  g_auto (List) list = { 0 };

  read_list (&list,
             "Pile,Easting,Northing,Width (in),Bar size,Note\n"
             "A1,1,2,16,#8,good\n"
             "A2,12x5,2,16,#8,bad number\n"
             "A3,,2,16,#8,no place\n"
             "A4,1,2,16,#12,no such bar\n"
             "A5,1,2,16000,#8,\"too wide,\r\nby far\"\n"
             ",1,2,16,#8,no mark\n"
             "a1,1,2,16,#8,again\n"
             ",,,,,\n"
             "A6,1,2,16,#8,good\n",
             LB_UNITS_METRIC);
  g_assert_cmpuint (list.rows->piles->len, ==, 2);
  g_assert_cmpstr (pile (&list, 1)->mark, ==, "A6");
  g_assert_cmpuint (list.rows->faults->len, ==, 6);
  assert_fault (&list, 0, 3, "Easting", "12x5");
  assert_fault (&list, 1, 4, "Easting", "empty");
  assert_fault (&list, 2, 5, "Bar size", "#12");
  assert_fault (&list, 3, 6, "Width (in)", "16000");
  assert_fault (&list, 4, 8, "Pile", "empty");
  assert_fault (&list, 5, 9, "Pile", "line 2");
}

/* Facts that are each possible and contradict each other: the row as a whole is wrong. */
static void
test_contradiction (void)
{
  g_auto (List) list = { 0 };

  read_list (&list, "mark,x,y,mudline,toe\nA1,1,2,-10,-20\nA2,1,2,-10,-5\n", LB_UNITS_METRIC);
  g_assert_cmpuint (list.rows->piles->len, ==, 1);
  assert_fault (&list, 0, 3, "whole row", "");
}

static void
test_taken_marks (void)
{
  g_auto (List) list = { 0 };
  g_autoptr (GHashTable) taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) error = NULL;
  LbPile defaults;

  g_hash_table_add (taken, lb_mark_key ("G 7"));
  guess (&list, "mark,x,y\nG7,1,1\nG8,1,1\n", LB_UNITS_METRIC);
  lb_pile_init (&defaults);
  list.rows = lb_pile_list_read (list.table, &list.map, &defaults, taken, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list.rows->piles->len, ==, 1);
  assert_fault (&list, 0, 2, "mark", "already in the job");
}

static void
assert_map_refused (List *list, const char *said)
{
  g_autoptr (GError) error = NULL;
  LbPile defaults;

  lb_pile_init (&defaults);
  g_assert_null (
    lb_pile_list_read (list->table, &list->map, &defaults, NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, LB_EXCHANGE_ERROR, LB_EXCHANGE_ERROR_COLUMN);
  g_assert_nonnull (strstr (error->message, said));
}

static void
test_missing_columns (void)
{
  g_auto (List) list = { 0 };

  guess (&list, "mark,x,y\nA,1,1\n", LB_UNITS_METRIC);
  list.map.column_of[LB_FACT_MARK] = LB_COLUMN_NONE;
  assert_map_refused (&list, "Mark");
  list.map.column_of[LB_FACT_MARK] = 0;
  list.map.column_of[LB_FACT_X] = LB_COLUMN_NONE;
  assert_map_refused (&list, "East");
  list.map.column_of[LB_FACT_X] = 1;
  list.map.column_of[LB_FACT_Y] = LB_COLUMN_NONE;
  assert_map_refused (&list, "North");
  list.map.column_of[LB_FACT_Y] = 3;
  assert_map_refused (&list, "column 4");
}

/* --- Many ---------------------------------------------------------------------------------- */

static char *
many_rows (guint n)
{
  GString *text = g_string_new ("mark,x,y,width,batter,bearing\n");

  for (guint i = 1; i < n; i++)
    g_string_append_printf (text, "P%05u,%u.25,%u.5,16,1:%u,%u\n", i, i % 1000, i / 1000, 4 + i % 9,
                            i % 360);
  return g_string_free (text, FALSE);
}

static void
count_cb (gsize done, gsize total, gpointer data)
{
  gsize *last = data;

  g_assert_cmpuint (done, >=, *last);
  g_assert_cmpuint (done, <=, total);
  *last = done;
}

static void
test_many (void)
{
  g_autofree char *text = many_rows (LB_TEXT_TABLE_ROWS_MAX);
  g_auto (List) list = { 0 };
  g_autoptr (GError) error = NULL;
  LbPile defaults;
  gsize last = 0;

  guess (&list, text, LB_UNITS_US);
  lb_pile_init (&defaults);
  list.rows = lb_pile_list_read (list.table, &list.map, &defaults, NULL, count_cb, &last, NULL,
                                 &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list.rows->piles->len, ==, LB_TEXT_TABLE_ROWS_MAX - 1);
  g_assert_cmpuint (list.rows->faults->len, ==, 0);
  g_assert_cmpuint (last, ==, LB_TEXT_TABLE_ROWS_MAX - 1);
}

static void
cancel_cb (gsize done, gsize total, gpointer data)
{
  if (done > total / 2)
    g_cancellable_cancel (data);
}

static void
test_cancel (void)
{
  g_autofree char *text = many_rows (20000);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_auto (List) list = { 0 };
  LbPile defaults;

  guess (&list, text, LB_UNITS_US);
  lb_pile_init (&defaults);
  g_assert_null (lb_pile_list_read (list.table, &list.map, &defaults, NULL, cancel_cb, cancellable,
                                    cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pile-list/headings", test_headings);
  g_test_add_func ("/pile-list/fact-names", test_fact_names);
  g_test_add_func ("/pile-list/better-name-wins", test_better_name_wins);
  g_test_add_func ("/pile-list/headless", test_headless);
  g_test_add_func ("/pile-list/fixture-file", test_fixture_file);
  g_test_add_func ("/pile-list/every-fact", test_every_fact);
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autofree char *path = g_strconcat ("/pile-list/number/", numbers[i].name, NULL);

    g_test_add_data_func (path, &numbers[i], test_number);
  }
  g_test_add_func ("/pile-list/doubtful-number", test_doubtful_number);
  g_test_add_func ("/pile-list/units-set-by-hand", test_units_set_by_hand);
  g_test_add_func ("/pile-list/batters-and-bearings", test_batters_and_bearings);
  g_test_add_func ("/pile-list/bearing-forms", test_bearing_forms);
  g_test_add_func ("/pile-list/degrees-by-heading", test_degrees_by_heading);
  g_test_add_func ("/pile-list/bars-in-one-cell", test_bars_in_one_cell);
  g_test_add_func ("/pile-list/mark-of-row-and-bent", test_mark_of_row_and_bent);
  g_test_add_func ("/pile-list/defaults", test_defaults);
  g_test_add_func ("/pile-list/formula-guard", test_formula_guard);
  g_test_add_func ("/pile-list/line-breaks-in-notes", test_line_breaks_in_notes);
  g_test_add_func ("/pile-list/bad-rows", test_bad_rows);
  g_test_add_func ("/pile-list/contradiction", test_contradiction);
  g_test_add_func ("/pile-list/taken-marks", test_taken_marks);
  g_test_add_func ("/pile-list/missing-columns", test_missing_columns);
  g_test_add_func ("/pile-list/many", test_many);
  g_test_add_func ("/pile-list/cancel", test_cancel);

  return g_test_run ();
}
