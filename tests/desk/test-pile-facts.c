/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the pile sheet says and lets be set: facts refused and taken, figures with their reasons,
 * defaults. */
#include "desk/sheet/caution-list.h"
#include "desk/sheet/checked-row.h"
#include "desk/sheet/defaults-window.h"
#include "desk/sheet/fact-group.h"
#include "desk/sheet/figure-list.h"
#include "sheet-fixture.h"

#include <adwaita.h>

static GtkWidget *
fact_row (SheetFixture *fixture, const char *title)
{
  GtkWidget *group = sheet_find_type (fixture->sheet, LB_TYPE_FACT_GROUP);
  GtkWidget *row;

  adw_expander_row_set_expanded (ADW_EXPANDER_ROW (group), TRUE);
  row = sheet_find (group, sheet_is_row, title);
  g_assert_nonnull (row);
  return row;
}

static void
test_fact_refused (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Width");
  const double before = sheet_facts_of (fixture, SHEET_PILE)->outline.width_m;

  gtk_editable_set_text (GTK_EDITABLE (row), "fat");
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  sheet_assert_reads (lb_checked_row_get_note_row (LB_CHECKED_ROW (row)), "fat");
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpfloat (sheet_facts_of (fixture, SHEET_PILE)->outline.width_m, ==, before);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "fat");

  g_assert_true (sheet_press_key (row, GDK_KEY_Escape));
  g_assert_false (gtk_widget_has_css_class (row, "error"));

  row = fact_row (fixture, "Mark");
  gtk_editable_set_text (GTK_EDITABLE (row), sheet_facts_of (fixture, 0)->mark);
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
}

static void
test_fact_stored (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Width");

  gtk_editable_set_text (GTK_EDITABLE (row), "508 mm");
  g_assert_false (gtk_widget_has_css_class (row, "error"));
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpfloat_with_epsilon (sheet_facts_of (fixture, SHEET_PILE)->outline.width_m, 0.508,
                                  1e-9);
  /* Shown in the job's unit, as it is stored. */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "20");
  sheet_assert_reads (fixture->sheet, "20 in octagonal");

  /* What disagrees with the rest is said, and stored: the other fact may be the wrong one. */
  row = fact_row (fixture, "Head elevation");
  gtk_editable_set_text (GTK_EDITABLE (row), "-100");
  g_assert_true (gtk_widget_has_css_class (row, "warning"));
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpfloat_with_epsilon (sheet_facts_of (fixture, SHEET_PILE)->head_m, -30.48, 1e-9);

  /* Kept in metres, read in feet. */
  gtk_editable_set_text (GTK_EDITABLE (row), "4.9");
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "4.9");
}

/* What is being typed survives what is recorded meanwhile, and is stored for its own pile when
 * another is looked at. */
static void
test_fact_half_typed (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Note");

  gtk_editable_set_text (GTK_EDITABLE (row), "spalled");
  sheet_click_button (fixture->sheet, "Cleaned");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "spalled");
  g_assert_cmpstr (sheet_facts_of (fixture, SHEET_PILE)->note, ==, "");

  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpstr (sheet_facts_of (fixture, SHEET_PILE)->note, ==, "spalled");
  g_assert_cmpstr (sheet_facts_of (fixture, 7)->note, ==, "");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "");
}

static void
test_fact_chosen (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *group = sheet_find_type (fixture->sheet, LB_TYPE_FACT_GROUP);
  GtkWidget *shape;

  fact_row (fixture, "Mark");
  shape = sheet_find_type (group, GTK_TYPE_DROP_DOWN);
  /* The first of the list is "not known". */
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (shape)), ==, LB_SHAPE_OCTAGON + 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (shape), 0);
  g_assert_false (lb_pile_says (sheet_facts_of (fixture, SHEET_PILE), LB_FACT_SHAPE));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (shape), LB_SHAPE_ROUND + 1);
  g_assert_true (lb_pile_says (sheet_facts_of (fixture, SHEET_PILE), LB_FACT_SHAPE));
  g_assert_cmpint (sheet_facts_of (fixture, SHEET_PILE)->outline.shape, ==, LB_SHAPE_ROUND);
  /* Looking at another pile records nothing. */
  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpint (sheet_facts_of (fixture, 7)->outline.shape, ==, LB_SHAPE_OCTAGON);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (shape)), ==, LB_SHAPE_OCTAGON + 1);
}

static void
test_figures (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *figures = sheet_find_type (fixture->sheet, LB_TYPE_FIGURE_LIST);
  GtkWidget *reason = sheet_find (figures, sheet_reads, "bars on record");

  sheet_assert_reads (figures, "Hook load");
  sheet_assert_reads (sheet_find_type (fixture->sheet, LB_TYPE_CAUTION_LIST), "Caution");
  sheet_assert_reads (sheet_find_type (fixture->sheet, LB_TYPE_CAUTION_LIST), "At every cut");
  g_assert_nonnull (reason);
  /* The same row says it when something is recorded. */
  sheet_touch_bar (fixture, 0);
  g_assert_true (sheet_find (figures, sheet_reads, "bars on record") == reason);
}

static void
assert_whole (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    g_assert_false (pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget))));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    assert_whole (child);
}

/* However long: a figure is checked by its reason. */
static void
test_reasons_are_whole (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *figures = sheet_find_type (fixture->sheet, LB_TYPE_FIGURE_LIST);
  GtkWidget *reason = sheet_find (figures, sheet_reads, "bars on record");
  const int height = gtk_widget_get_height (reason);

  gtk_label_set_label (GTK_LABEL (reason),
                       "de 8 barras que constan en el registro, contadas por el buzo al pie de la "
                       "obra, con las que se dieron por quemadas sin que se dijera cuáles");
  gtk_test_widget_wait_for_draw (fixture->window);
  g_assert_cmpint (gtk_widget_get_height (reason), >, 2 * height);
  assert_whole (figures);
}

static void
test_defaults (SheetFixture *fixture, gconstpointer data)
{
  LbDefaultsWindow *window = lb_defaults_window_new (GTK_WINDOW (fixture->window), fixture->job);
  GtkWidget *row = sheet_find (GTK_WIDGET (window), sheet_is_row, "Water level");
  const LbAssumptions *now;

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), "9999999");
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  gtk_editable_set_text (GTK_EDITABLE (row), "+3.1 ft");
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  now = &lb_job_get_fold (fixture->job)->assumptions;
  g_assert_cmpfloat_with_epsilon (now->value[LB_ASSUME_WATER_LEVEL], 3.1 * 0.3048, 1e-9);
  g_assert_true (now->is_own[LB_ASSUME_WATER_LEVEL]);
  sheet_assert_reads (lb_checked_row_get_note_row (LB_CHECKED_ROW (row)), "the default is");
  /* The sheet's own row follows. */
  g_assert_cmpstr (
    gtk_editable_get_text (GTK_EDITABLE (sheet_find (fixture->sheet, sheet_is_row, "Water level"))),
    ==, "3.1");

  g_signal_emit_by_name (sheet_find (row, sheet_has_icon, "edit-undo-symbolic"), "clicked");
  now = &lb_job_get_fold (fixture->job)->assumptions;
  g_assert_false (now->is_own[LB_ASSUME_WATER_LEVEL]);
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_null (window);
}

int
main (int argc, char *argv[])
{
  static const struct
  {
    const char *path;
    void (*test) (SheetFixture *fixture, gconstpointer data);
  } tests[] = {
    { "/pile-facts/fact-refused", test_fact_refused },
    { "/pile-facts/fact-stored", test_fact_stored },
    { "/pile-facts/fact-half-typed", test_fact_half_typed },
    { "/pile-facts/fact-chosen", test_fact_chosen },
    { "/pile-facts/figures", test_figures },
    { "/pile-facts/reasons-are-whole", test_reasons_are_whole },
    { "/pile-facts/defaults", test_defaults },
  };

  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, SheetFixture, NULL, sheet_set_up, tests[i].test, sheet_tear_down);
  return g_test_run ();
}
