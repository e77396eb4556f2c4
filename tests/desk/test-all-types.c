/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every class of the application is built once, with warnings fatal: a property, an id or a handler
 * that a .ui file names and that does not exist stops it. What can take the focus has a name. And a
 * window shows what it must for each kind of file. */
#include "desk/shell/pages.h"
#include "desk/shell/window.h"
#include "small-job.h"

#include <glib/gstdio.h>

static gboolean
has_name (GtkWidget *widget)
{
  return gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget),
                                           GTK_ACCESSIBLE_PROPERTY_LABEL) ||
         gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget),
                                           GTK_ACCESSIBLE_RELATION_LABELLED_BY);
}

/* GTK's own parts, which name themselves as they see fit. */
static gboolean
is_part_of_gtk (GtkWidget *widget)
{
  return GTK_IS_MENU_BUTTON (gtk_widget_get_parent (widget)) ||
         gtk_widget_get_ancestor (widget, GTK_TYPE_CALENDAR) != NULL ||
         gtk_widget_get_ancestor (widget, GTK_TYPE_INFO_BAR) != NULL ||
         gtk_widget_get_ancestor (widget, GTK_TYPE_SPIN_BUTTON) != NULL ||
         gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL;
}

/* A button of which only a picture is seen must be named for those who do not see it. */
static void
check_buttons (GtkWidget *widget)
{
  if (GTK_IS_BUTTON (widget) && gtk_button_get_icon_name (GTK_BUTTON (widget)) != NULL &&
      !is_part_of_gtk (widget))
  {
    if (!has_name (widget))
      g_test_fail_printf ("a %s with the icon “%s” has no accessible name",
                          G_OBJECT_TYPE_NAME (widget),
                          gtk_button_get_icon_name (GTK_BUTTON (widget)));
    if (gtk_widget_get_tooltip_text (widget) == NULL)
      g_test_fail_printf ("a %s with the icon “%s” has no tooltip", G_OBJECT_TYPE_NAME (widget),
                          gtk_button_get_icon_name (GTK_BUTTON (widget)));
  }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    check_buttons (child);
}

static void
test_page (gconstpointer data)
{
  const LbPageKind *kind = data;
  char *path = small_job_create ();
  LbJob *job = small_job_open (path);
  LbSelection *selection = lb_selection_new ();
  GtkWidget *page = g_object_ref_sink (g_object_new (kind->get_type (), NULL));
  g_autoptr (GObject) got = NULL;

  g_object_set (page, "selection", selection, "job", job, NULL);
  g_object_get (page, "job", &got, NULL);
  g_assert_true (got == G_OBJECT (job));
  g_assert_true (has_name (page));
  check_buttons (page);
  g_clear_object (&got);

  lb_selection_set_current (selection, 1);
  g_object_set (page, "job", NULL, NULL);
  g_assert_finalize_object (page);
  g_assert_finalize_object (selection);
  g_assert_finalize_object (job);
  small_job_remove (path);
}

static GtkWidget *
find_stack (GtkWidget *widget)
{
  if (GTK_IS_STACK (widget) && gtk_stack_get_child_by_name (GTK_STACK (widget), "loading") != NULL)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = find_stack (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
settled_cb (GObject *stack, GParamSpec *pspec, gboolean *is_settled)
{
  *is_settled = !g_str_equal (gtk_stack_get_visible_child_name (GTK_STACK (stack)), "loading");
}

/* Opens @path in the window and says what is shown then. */
static const char *
open_in (LbWindow *window, const char *path)
{
  GtkWidget *stack = find_stack (GTK_WIDGET (window));
  g_autoptr (GFile) file = g_file_new_for_path (path);
  gboolean is_settled = FALSE;
  const gulong id = g_signal_connect (stack, "notify::visible-child", G_CALLBACK (settled_cb),
                                      &is_settled);

  lb_window_open (window, file);
  is_settled = FALSE;
  small_job_wait (&is_settled);
  g_signal_handler_disconnect (stack, id);
  return gtk_stack_get_visible_child_name (GTK_STACK (stack));
}

static void
test_window (void)
{
  char *path = small_job_create ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *foreign = g_build_filename (folder, "list.csv", NULL);
  LbWindow *window = lb_window_new (NULL);
  GActionMap *actions = G_ACTION_MAP (window);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (find_stack (GTK_WIDGET (window)))),
                   ==, "empty");
  g_assert_false (g_action_get_enabled (g_action_map_lookup_action (actions, "save-copy")));

  g_assert_cmpstr (open_in (window, path), ==, "job");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Small & Sons");
  g_assert_true (g_action_get_enabled (g_action_map_lookup_action (actions, "save-copy")));
  g_assert_false (g_action_get_enabled (g_action_map_lookup_action (actions, "take-back")));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  check_buttons (GTK_WIDGET (window));

  /* Units change at once, and can be taken back. */
  g_action_change_state (g_action_map_lookup_action (actions, "units"),
                         g_variant_new_string ("metric"));
  g_assert_cmpint (lb_job_get_voice (lb_window_get_job (window))->units, ==, LB_UNITS_METRIC);
  g_action_activate (g_action_map_lookup_action (actions, "take-back"), NULL);
  g_assert_cmpint (lb_job_get_voice (lb_window_get_job (window))->units, ==, LB_UNITS_US);

  g_file_set_contents (foreign, "mark,x,y\n", -1, NULL);
  g_assert_cmpstr (open_in (window, foreign), ==, "failed");
  g_assert_null (lb_window_get_job (window));
  g_assert_false (g_action_get_enabled (g_action_map_lookup_action (actions, "save-copy")));

  gtk_window_destroy (GTK_WINDOW (window));
  small_job_remove (path);
}

/* A new window waits for what it is to show. */
static void
test_new_window (void)
{
  char *path = small_job_create ();
  LbWindow *window = lb_window_new (NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  lb_window_open (window, file);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (window)));
  while (!gtk_widget_get_visible (GTK_WIDGET (window)))
    g_main_context_iteration (NULL, TRUE);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  while (lb_window_get_job (window) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (find_stack (GTK_WIDGET (window)))),
                   ==, "job");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Small & Sons");

  gtk_window_destroy (GTK_WINDOW (window));
  small_job_remove (path);
}

int
main (int argc, char *argv[])
{
  gsize n;
  const LbPageKind *kinds = lb_page_kinds (&n);

  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  /* As the application does it, which a test has none of. */
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()),
                                    "/org/lastbent/Lastbent/icons");
  for (gsize i = 0; i < n; i++) {
    g_autofree char *path = g_strconcat ("/page/", kinds[i].name, NULL);

    g_test_add_data_func (path, &kinds[i], test_page);
  }
  g_test_add_func ("/window", test_window);
  g_test_add_func ("/new-window", test_new_window);

  return g_test_run ();
}
