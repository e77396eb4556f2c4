/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Plan page under the hand: picking, boxing, keys, marking, filter, list and finder, asked by
 * what the selection, the job and the accessible words say afterwards. */
#include "desk/plan/pile-finder.h"
#include "desk/plan/pile-table.h"
#include "desk/plan/plan-canvas.h"
#include "desk/plan/plan-legend.h"
#include "desk/plan/plan-page.h"
#include "desk/plan/step-tools.h"
#include "desk/sheet/pile-sheet.h"
#include "small-job.h"

#include <adwaita.h>
#include <string.h>

typedef struct
{
  char *path;
  LbJob *job;
  LbSelection *selection;
  GtkWidget *window;
  GtkWidget *page;
  GtkWidget *canvas;
} Fixture;

static GtkWidget *
find_widget (GtkWidget *parent, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (parent, type))
    return parent;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = find_widget (child, type);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->selection = lb_selection_new ();
  fixture->page = g_object_new (LB_TYPE_PLAN_PAGE, NULL);
  g_object_set (fixture->page, "selection", fixture->selection, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1000, 700);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
  fixture->canvas = find_widget (fixture->page, LB_TYPE_PLAN_CANVAS);
  g_assert_nonnull (fixture->canvas);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->page), (gpointer *) &fixture->page);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (fixture->page != NULL && g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (fixture->page);
  g_assert_finalize_object (fixture->selection);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

static GtkEventController *
controller (Fixture *fixture, const char *name)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (fixture->canvas);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

    if (g_strcmp0 (gtk_event_controller_get_name (one), name) == 0)
      return one;
  }
  g_error ("there is no controller “%s”", name);
}

static guint
pile_called (Fixture *fixture, const char *mark)
{
  const int pile = lb_fold_find_mark (lb_job_get_fold (fixture->job), mark);

  g_assert_cmpint (pile, >=, 0);
  return (guint) pile;
}

static LbStep
step_of (Fixture *fixture, const char *mark)
{
  return lb_job_get_fold (fixture->job)->states[pile_called (fixture, mark)].step;
}

static void
press_at (Fixture *fixture, double x, double y)
{
  GtkEventController *click = controller (fixture, "plan-click");

  g_signal_emit_by_name (click, "pressed", 1, x, y);
  g_signal_emit_by_name (click, "released", 1, x, y);
}

static void
press_pile (Fixture *fixture, const char *mark)
{
  double x, y;

  g_assert_true (lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas),
                                            pile_called (fixture, mark), &x, &y));
  press_at (fixture, x, y);
}

/* Drags from beside one pile to beside another, so that both and all between are inside. */
static void
box (Fixture *fixture, const char *from, const char *to)
{
  GtkEventController *drag = controller (fixture, "plan-drag");
  double x, y, to_x, to_y;

  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile_called (fixture, from), &x, &y);
  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile_called (fixture, to), &to_x,
                             &to_y);
  x -= 20;
  y -= 20;
  to_x += 20;
  to_y += 20;
  g_signal_emit_by_name (drag, "drag-begin", x, y);
  g_signal_emit_by_name (drag, "drag-update", (to_x - x) / 2, (to_y - y) / 2);
  g_signal_emit_by_name (drag, "drag-update", to_x - x, to_y - y);
  g_signal_emit_by_name (drag, "drag-end", to_x - x, to_y - y);
}

static gsize
count_picked (Fixture *fixture)
{
  gsize n;

  lb_selection_get_piles (fixture->selection, &n);
  return n;
}

static void
assert_current (Fixture *fixture, const char *mark)
{
  const int current = lb_selection_get_current (fixture->selection);

  g_assert_cmpint (current, >=, 0);
  g_assert_cmpstr (lb_job_get_fold (fixture->job)->piles[current].mark, ==, mark);
}

static void
test_picks (Fixture *fixture, gconstpointer data)
{
  gtk_test_accessible_assert_role (fixture->canvas, GTK_ACCESSIBLE_ROLE_IMG);
  press_pile (fixture, "B2");
  assert_current (fixture, "B2");
  g_assert_cmpuint (count_picked (fixture), ==, 1);
  gtk_test_accessible_assert_property (fixture->canvas, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "B2: standing");

  press_at (fixture, 2, 2);
  g_assert_cmpint (lb_selection_get_current (fixture->selection), ==, -1);
}

/* The sheet is made for the first pile picked, is kept, and shows the pile that was. */
static void
test_sheet_when_picked (Fixture *fixture, gconstpointer data)
{
  GtkWidget *sheet;

  g_assert_null (find_widget (fixture->page, LB_TYPE_PILE_SHEET));
  lb_selection_set_current (fixture->selection, 0);
  sheet = find_widget (fixture->page, LB_TYPE_PILE_SHEET);
  g_assert_nonnull (sheet);
  g_assert_true (gtk_widget_get_child_visible (sheet));
  g_assert_true (lb_job_page_get_job (LB_JOB_PAGE (sheet)) == fixture->job);
  lb_selection_set_current (fixture->selection, -1);
  g_assert_false (gtk_widget_get_child_visible (sheet));
  lb_selection_set_current (fixture->selection, 1);
  g_assert_true (find_widget (fixture->page, LB_TYPE_PILE_SHEET) == sheet);
  g_assert_true (gtk_widget_get_child_visible (sheet));
}

static void
test_boxes (Fixture *fixture, gconstpointer data)
{
  box (fixture, "A1", "B2");
  g_assert_cmpuint (count_picked (fixture), ==, 4);
  g_assert_true (lb_selection_has (fixture->selection, pile_called (fixture, "A2")));
  g_assert_false (lb_selection_has (fixture->selection, pile_called (fixture, "C1")));
}

/* A press that shakes is a press: the drag stays below its threshold and picks nothing. */
static void
test_shaking_press (Fixture *fixture, gconstpointer data)
{
  GtkEventController *drag = controller (fixture, "plan-drag");

  press_pile (fixture, "C3");
  g_signal_emit_by_name (drag, "drag-begin", 5.0, 5.0);
  g_signal_emit_by_name (drag, "drag-update", 3.0, 2.0);
  g_signal_emit_by_name (drag, "drag-end", 3.0, 2.0);
  assert_current (fixture, "C3");
}

static gboolean
key (Fixture *fixture, guint keyval)
{
  /* Bindings live in a shortcut controller of the class; it is asked as GTK asks it. */
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (fixture->canvas);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

    if (!GTK_IS_SHORTCUT_CONTROLLER (one))
      continue;
    for (guint k = 0; k < g_list_model_get_n_items (G_LIST_MODEL (one)); k++) {
      g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (one), k);
      GtkShortcutTrigger *trigger = gtk_shortcut_get_trigger (shortcut);

      if (GTK_IS_KEYVAL_TRIGGER (trigger) &&
          gtk_keyval_trigger_get_keyval (GTK_KEYVAL_TRIGGER (trigger)) == keyval &&
          gtk_keyval_trigger_get_modifiers (GTK_KEYVAL_TRIGGER (trigger)) == 0)
        return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, fixture->canvas,
                                             gtk_shortcut_get_arguments (shortcut));
    }
  }
  return FALSE;
}

static void
test_keys (Fixture *fixture, gconstpointer data)
{
  g_assert_true (key (fixture, GDK_KEY_Home));
  assert_current (fixture, "A1");
  g_assert_true (key (fixture, GDK_KEY_Right));
  assert_current (fixture, "A2");
  g_assert_true (key (fixture, GDK_KEY_Down));
  assert_current (fixture, "B2");
  g_assert_true (key (fixture, GDK_KEY_Left));
  assert_current (fixture, "B1");
  /* There is nothing further left, and nothing happens. */
  g_assert_true (key (fixture, GDK_KEY_Left));
  assert_current (fixture, "B1");
  g_assert_true (key (fixture, GDK_KEY_End));
  assert_current (fixture, "C4");
  g_assert_true (key (fixture, GDK_KEY_Escape));
  g_assert_cmpint (lb_selection_get_current (fixture->selection), ==, -1);
}

static LbStepTools *
tools (Fixture *fixture)
{
  return LB_STEP_TOOLS (find_widget (fixture->page, LB_TYPE_STEP_TOOLS));
}

static void
test_marks (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  lb_step_tools_set_step (tools (fixture), LB_STEP_SEVERED);
  press_pile (fixture, "A1");
  g_assert_cmpint (step_of (fixture, "A1"), ==, LB_STEP_SEVERED);
  /* Marking is not picking. */
  g_assert_cmpuint (count_picked (fixture), ==, 0);

  box (fixture, "B2", "C3");
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->n_by_step[LB_STEP_SEVERED], ==, 5);
  lb_job_take_back (fixture->job, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->n_by_step[LB_STEP_SEVERED], ==, 1);

  g_assert_true (key (fixture, GDK_KEY_Escape));
  g_assert_cmpint (lb_step_tools_get_step (tools (fixture)), ==, -1);
  press_pile (fixture, "C4");
  g_assert_cmpint (step_of (fixture, "C4"), ==, LB_STEP_STANDING);
  assert_current (fixture, "C4");

  /* By the menu's action, the picked piles. */
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.mark", "s", "cleaned"));
  g_assert_cmpint (step_of (fixture, "C4"), ==, LB_STEP_CLEANED);
}

static GtkWidget *
find_toast (GtkWidget *parent)
{
  if (g_str_equal (gtk_widget_get_css_name (parent), "toast"))
    return parent;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = find_toast (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

/* What is said of a mark stands over the plan and not over the tools that are pressed next. */
static void
test_toast_is_clear_of_the_tools (Fixture *fixture, gconstpointer data)
{
  GtkWidget *toast;
  graphene_rect_t said, pressed;

  lb_step_tools_set_step (tools (fixture), LB_STEP_CLEANED);
  press_pile (fixture, "A1");
  gtk_test_widget_wait_for_draw (fixture->window);
  toast = find_toast (fixture->page);
  g_assert_nonnull (toast);
  g_assert_true (gtk_widget_compute_bounds (toast, fixture->page, &said));
  g_assert_true (gtk_widget_compute_bounds (GTK_WIDGET (tools (fixture)), fixture->page, &pressed));
  g_assert_cmpfloat (said.size.height, >, 0);
  g_assert_cmpfloat (said.origin.y + said.size.height, <=, pressed.origin.y);
}

/* What is under the pointer tells no tip while its menu is up. */
static void
test_menu_without_tip (Fixture *fixture, gconstpointer data)
{
  GtkWidget *menu = find_widget (fixture->canvas, GTK_TYPE_POPOVER_MENU);

  g_assert_true (gtk_widget_get_has_tooltip (fixture->canvas));
  g_signal_emit_by_name (fixture->canvas, "menu", 100.0, 100.0);
  g_assert_true (gtk_widget_get_visible (menu));
  g_assert_false (gtk_widget_get_has_tooltip (fixture->canvas));
  gtk_popover_popdown (GTK_POPOVER (menu));
  g_assert_true (gtk_widget_get_has_tooltip (fixture->canvas));
}

static GtkWidget *
legend_button (Fixture *fixture, LbStep step)
{
  GtkWidget *legend = find_widget (fixture->page, LB_TYPE_PLAN_LEGEND);
  GtkWidget *flow = find_widget (legend, GTK_TYPE_FLOW_BOX);

  return gtk_flow_box_child_get_child (
    gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (flow), (int) step));
}

static void
test_filters (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  const guint piles[] = { pile_called (fixture, "A2"), pile_called (fixture, "C2") };

  lb_job_mark_step (fixture->job, piles, 2, LB_STEP_RIGGED, &error);
  g_assert_no_error (error);
  gtk_test_accessible_assert_property (legend_button (fixture, LB_STEP_RIGGED),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Rigged: 2");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (legend_button (fixture, LB_STEP_RIGGED)), TRUE);
  press_pile (fixture, "B2");
  g_assert_cmpint (lb_selection_get_current (fixture->selection), ==, -1);
  box (fixture, "A1", "C4");
  g_assert_cmpuint (count_picked (fixture), ==, 2);
  /* Keys walk over what is not shown. */
  key (fixture, GDK_KEY_Home);
  assert_current (fixture, "A2");
  key (fixture, GDK_KEY_Down);
  assert_current (fixture, "C2");
}

static void
test_list_shares_the_selection (Fixture *fixture, gconstpointer data)
{
  GtkWidget *table = find_widget (fixture->page, LB_TYPE_PILE_TABLE);
  GtkWidget *view = find_widget (table, GTK_TYPE_COLUMN_VIEW);
  GtkSelectionModel *model = gtk_column_view_get_model (GTK_COLUMN_VIEW (view));
  gboolean shows;

  /* Rows are made when the list is first looked at, and show what was picked before. */
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (model)), ==, 0);
  press_pile (fixture, "B2");
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.show-list", NULL));
  g_object_get (fixture->page, "shows-list", &shows, NULL);
  g_assert_true (shows);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (model)), ==,
                    SMALL_JOB_BENTS * SMALL_JOB_ROWS);
  g_assert_true (gtk_selection_model_is_selected (model, pile_called (fixture, "B2")));
  gtk_selection_model_select_item (model, pile_called (fixture, "C4"), TRUE);
  assert_current (fixture, "C4");
  gtk_selection_model_select_item (model, pile_called (fixture, "A1"), FALSE);
  g_assert_cmpuint (count_picked (fixture), ==, 2);
}

static void
test_finder (Fixture *fixture, gconstpointer data)
{
  GtkWidget *finder = find_widget (fixture->page, LB_TYPE_PILE_FINDER);
  GtkWidget *entry = find_widget (finder, GTK_TYPE_SEARCH_ENTRY);
  double x, y, then_x, then_y;

  /* The whole plan is on the page, and stays there. */
  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile_called (fixture, "C3"), &x, &y);
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.find", NULL));
  gtk_editable_set_text (GTK_EDITABLE (entry), "c 3");
  g_signal_emit_by_name (entry, "activate");
  assert_current (fixture, "C3");
  gtk_test_widget_wait_for_draw (fixture->window);
  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile_called (fixture, "C3"), &then_x,
                             &then_y);
  g_assert_cmpfloat_with_epsilon (then_x, x, 1);

  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.zoom-in", NULL));
  g_signal_emit_by_name (entry, "activate");
  gtk_test_widget_wait_for_draw (fixture->window);
  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile_called (fixture, "C3"), &x, &y);
  g_assert_cmpfloat_with_epsilon (x, gtk_widget_get_width (fixture->canvas) / 2.0, 1);

  gtk_editable_set_text (GTK_EDITABLE (entry), "no such pile");
  g_signal_emit_by_name (entry, "activate");
  assert_current (fixture, "C3");
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
}

/* The pile that is looked at stays where it is while the plan grows round it. */
static void
test_zoom_keeps_the_current (Fixture *fixture, gconstpointer data)
{
  const guint pile = pile_called (fixture, "A1");
  LbPlanCanvas *canvas = LB_PLAN_CANVAS (fixture->canvas);
  double x, y, then_x, then_y;

  lb_selection_set_current (fixture->selection, (int) pile);
  lb_plan_canvas_pile_place (canvas, pile, &x, &y);
  for (int i = 0; i < 3; i++)
    g_assert_true (gtk_widget_activate_action (fixture->page, "plan.zoom-in", NULL));
  lb_plan_canvas_pile_place (canvas, pile, &then_x, &then_y);
  g_assert_cmpfloat_with_epsilon (then_x, x, 0.01);
  g_assert_cmpfloat_with_epsilon (then_y, y, 0.01);
}

static void
test_zoom_keeps_the_middle (Fixture *fixture, gconstpointer data)
{
  const guint pile = pile_called (fixture, "B2");
  LbPlanCanvas *canvas = LB_PLAN_CANVAS (fixture->canvas);
  double x, y, apart, then_x, then_y;

  /* While the whole plan is on the page no pile is brought into the middle. */
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.zoom-in", NULL));
  lb_plan_canvas_show_pile (canvas, pile);
  lb_plan_canvas_pile_place (canvas, pile, &x, &y);
  lb_plan_canvas_pile_place (canvas, pile_called (fixture, "B3"), &apart, &then_y);
  apart -= x;
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.zoom-in", NULL));
  lb_plan_canvas_pile_place (canvas, pile, &then_x, &then_y);
  g_assert_cmpfloat_with_epsilon (then_x, x, 0.01);
  g_assert_cmpfloat_with_epsilon (then_y, y, 0.01);
  lb_plan_canvas_pile_place (canvas, pile_called (fixture, "B3"), &x, &y);
  g_assert_cmpfloat (x - then_x, >, apart * 1.3);

  /* Fitted, every pile is inside. */
  g_assert_true (gtk_widget_activate_action (fixture->page, "plan.fit", NULL));
  for (guint i = 0; i < SMALL_JOB_BENTS * SMALL_JOB_ROWS; i++) {
    lb_plan_canvas_pile_place (canvas, i, &x, &y);
    g_assert_cmpfloat (x, >, 0);
    g_assert_cmpfloat (y, >, 0);
    g_assert_cmpfloat (x, <, gtk_widget_get_width (fixture->canvas));
    g_assert_cmpfloat (y, <, gtk_widget_get_height (fixture->canvas));
  }
}

/* Where the fingers of a pinch are. The toolkit lets nobody make touches: the gesture's signals are
 * emitted, and this stands in for its own answer to where. */
static double fingers_x, fingers_y;

gboolean
gtk_gesture_get_bounding_box_center (GtkGesture *gesture, double *x, double *y)
{
  *x = fingers_x;
  *y = fingers_y;
  return TRUE;
}

static void
place_of (Fixture *fixture, const char *mark, double *x, double *y)
{
  g_assert_true (lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas),
                                            pile_called (fixture, mark), x, y));
}

/* From where A1 and B3 are told to be at the beginning of it. */
static void
assert_pinched (Fixture *fixture, const double a1[2], const double b3[2], double scale)
{
  double x, y;

  place_of (fixture, "B3", &x, &y);
  g_assert_cmpfloat_with_epsilon (x, b3[0], 0.01);
  g_assert_cmpfloat_with_epsilon (y, b3[1], 0.01);
  place_of (fixture, "A1", &x, &y);
  g_assert_cmpfloat_with_epsilon (x - b3[0], (a1[0] - b3[0]) * scale, 0.01);
  g_assert_cmpfloat_with_epsilon (y - b3[1], (a1[1] - b3[1]) * scale, 0.01);
}

/* A pinch enlarges by as much as the fingers have parted since it began, about where they are, and
 * there and back again leaves the plan as it was. */
static void
test_pinch (Fixture *fixture, gconstpointer data)
{
  GtkEventController *pinch = controller (fixture, "plan-pinch");
  double a1[2], b3[2];

  place_of (fixture, "A1", &a1[0], &a1[1]);
  place_of (fixture, "B3", &b3[0], &b3[1]);
  fingers_x = b3[0];
  fingers_y = b3[1];

  g_signal_emit_by_name (pinch, "begin", NULL);
  assert_pinched (fixture, a1, b3, 1);
  g_signal_emit_by_name (pinch, "scale-changed", 1.5);
  assert_pinched (fixture, a1, b3, 1.5);
  g_signal_emit_by_name (pinch, "scale-changed", 3.0);
  assert_pinched (fixture, a1, b3, 3);
  g_signal_emit_by_name (pinch, "end", NULL);

  /* The next one goes on from there. */
  g_signal_emit_by_name (pinch, "begin", NULL);
  g_signal_emit_by_name (pinch, "scale-changed", 0.5);
  assert_pinched (fixture, a1, b3, 1.5);
  g_signal_emit_by_name (pinch, "scale-changed", 1.0 / 3);
  assert_pinched (fixture, a1, b3, 1);
  g_signal_emit_by_name (pinch, "end", NULL);
}

/* Pointing at another pile leaves the picture of the plan alone: only the topmost layer's node is
 * another one. */
static void
test_hover_redraws_only_its_layer (Fixture *fixture, gconstpointer data)
{
  GtkEventController *motion = controller (fixture, "plan-motion");
  const guint pile = pile_called (fixture, "B2");
  double x, y;
  guint n_before, n_after;

  lb_plan_canvas_pile_place (LB_PLAN_CANVAS (fixture->canvas), pile, &x, &y);
  /* The sheet beside the plan takes its room with the first pile that is picked. */
  lb_selection_set_current (fixture->selection, (int) pile_called (fixture, "C4"));
  gtk_test_widget_wait_for_draw (fixture->window);
  n_before = lb_plan_canvas_count_drawn (LB_PLAN_CANVAS (fixture->canvas));
  g_assert_cmpuint (n_before, >, 0);
  g_signal_emit_by_name (motion, "motion", x, y);
  gtk_test_widget_wait_for_draw (fixture->window);
  lb_selection_set_current (fixture->selection, (int) pile);
  gtk_test_widget_wait_for_draw (fixture->window);
  n_after = lb_plan_canvas_count_drawn (LB_PLAN_CANVAS (fixture->canvas));
  g_assert_cmpuint (n_after, ==, n_before);

  lb_plan_canvas_zoom (LB_PLAN_CANVAS (fixture->canvas), 1.1);
  gtk_test_widget_wait_for_draw (fixture->window);
  g_assert_cmpuint (lb_plan_canvas_count_drawn (LB_PLAN_CANVAS (fixture->canvas)), >, n_after);
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/plan-page/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("picks", test_picks);
  ADD ("sheet-when-picked", test_sheet_when_picked);
  ADD ("boxes", test_boxes);
  ADD ("shaking-press", test_shaking_press);
  ADD ("keys", test_keys);
  ADD ("marks", test_marks);
  ADD ("toast-is-clear-of-the-tools", test_toast_is_clear_of_the_tools);
  ADD ("menu-without-tip", test_menu_without_tip);
  ADD ("filters", test_filters);
  ADD ("list-shares-the-selection", test_list_shares_the_selection);
  ADD ("finder", test_finder);
  ADD ("zoom-keeps-the-current", test_zoom_keeps_the_current);
  ADD ("zoom-keeps-the-middle", test_zoom_keeps_the_middle);
  ADD ("pinch", test_pinch);
  ADD ("hover-redraws-only-its-layer", test_hover_redraws_only_its_layer);

  return g_test_run ();
}
