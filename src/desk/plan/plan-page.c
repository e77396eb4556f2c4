/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Plan page holds its parts together: canvas and list share the selection and the legend's
 * filter; what is touched while a step is in hand is recorded as one act. The page keeps nothing
 * of the job.
 *
 * The line under the plan says the current pile in words, or what the tool in hand does.
 */
#include "desk/plan/plan-page.h"

#include "desk/plan/pile-finder.h"
#include "desk/plan/pile-table.h"
#include "desk/plan/plan-canvas.h"
#include "desk/plan/plan-legend.h"
#include "desk/plan/step-tools.h"
#include "desk/sheet/pile-sheet.h"
#include "desk/shell/say.h"
#include "desk/shell/selection.h"
#include "desk/shell/turn-page.h"
#include "draw/plan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#define ZOOM_STEP 1.4

struct _LbPlanPage
{
  LbJobPage parent_instance;

  /* Template widgets */
  LbPlanCanvas *canvas;
  GtkWidget *done_button;
  LbPileFinder *finder;
  GtkRevealer *finder_revealer;
  AdwFlap *flap;
  LbPlanLegend *legend;
  GMenu *pile_menu;
  GtkStack *sheet_stack;
  GtkLabel *status_label;
  GtkWidget *status_box;
  LbPileTable *table;
  LbStepTools *tools;
  GtkStack *view_stack;
  GtkStack *whole_stack;

  /* Owned */
  GtkWidget *menu_popover;
};

G_DEFINE_FINAL_TYPE (LbPlanPage, lb_plan_page, LB_TYPE_JOB_PAGE)

enum {
  PROP_SHOWS_LIST = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static LbJob *
job_of (LbPlanPage *self)
{
  return lb_job_page_get_job (LB_JOB_PAGE (self));
}

static LbSelection *
selection_of (LbPlanPage *self)
{
  return lb_job_page_get_selection (LB_JOB_PAGE (self));
}

/* "Marking as severed: …" */
static const char *
tool_sentence (int step)
{
  switch ((LbStep) step) {
  case LB_STEP_CLEANED:
    return _ ("Marking as cleaned: touch the piles, or box them.");
  case LB_STEP_SEVERED:
    return _ ("Marking as severed: touch the piles, or box them. Their bars are burned with it.");
  case LB_STEP_RIGGED:
    return _ ("Marking as rigged: touch the piles, or box them.");
  case LB_STEP_PULLED:
    return _ ("Marking as pulled: touch the piles, or box them.");
  case LB_STEP_STANDING:
  default:
    g_return_val_if_reached (NULL);
  }
}

static char *
current_words (LbPlanPage *self)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  const int current = lb_selection_get_current (selection_of (self));
  g_autofree char *state = NULL;
  gsize n;

  lb_selection_get_piles (selection_of (self), &n);
  if (current < 0 || (guint) current >= fold->n_piles)
    return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u pile. Touch it.", "%u piles. Touch one.", fold->n_piles),
      fold->n_piles);
  state = lb_pile_state_text (&fold->piles[current], &fold->states[current]);
  if (n == 1)
    return g_strdup_printf ("%s: %s", fold->piles[current].mark, state);
  /* Translators: the current pile, its state, and how many are picked with it. */
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%s: %s · %u pile picked", "%s: %s · %u piles picked", n),
    fold->piles[current].mark, state, (guint) n);
}

static void
update_status (LbPlanPage *self)
{
  const int step = lb_step_tools_get_step (self->tools);
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->done_button, step >= 0);
  if (step >= 0)
    gtk_widget_add_css_class (self->status_box, "in-hand");
  else
    gtk_widget_remove_css_class (self->status_box, "in-hand");
  if (step < 0 && job_of (self) != NULL && selection_of (self) != NULL)
    words = current_words (self);
  gtk_label_set_label (self->status_label, step >= 0       ? tool_sentence (step)
                                           : words != NULL ? words
                                                           : "");
}

static void
update_actions (LbPlanPage *self)
{
  const gboolean has_pile = job_of (self) != NULL && selection_of (self) != NULL &&
                            lb_selection_get_current (selection_of (self)) >= 0;
  const gboolean can_record = job_of (self) != NULL && !lb_job_is_read_only (job_of (self));

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "plan.mark", has_pile && can_record);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "plan.open-sheet", has_pile);
  gtk_widget_set_sensitive (GTK_WIDGET (self->tools), can_record);
}

static GtkWidget *
find_sheet (LbPlanPage *self)
{
  return gtk_stack_get_child_by_name (self->sheet_stack, "sheet");
}

/* The sheet is made for the first pile that is picked: it takes as long as the rest of the page. */
static void
show_sheet (LbPlanPage *self)
{
  gsize n = 0;

  if (selection_of (self) != NULL)
    lb_selection_get_piles (selection_of (self), &n);
  if (n > 0 && job_of (self) != NULL && find_sheet (self) == NULL)
    gtk_stack_add_named (self->sheet_stack,
                         g_object_new (LB_TYPE_PILE_SHEET, "job", job_of (self), "selection",
                                       selection_of (self), NULL),
                         "sheet");
  gtk_stack_set_visible_child_name (self->sheet_stack,
                                    n > 0 && find_sheet (self) != NULL ? "sheet" : "none");
}

static void
lb_plan_page_job_changed (LbJobPage *page)
{
  LbPlanPage *self = LB_PLAN_PAGE (page);
  const LbFold *fold = lb_job_get_fold (job_of (self));

  lb_turn_page (self->whole_stack, fold->n_piles > 0 ? "piles" : "none");
  lb_plan_legend_set_counts (self->legend, fold->n_by_step);
  update_status (self);
  update_actions (self);
}

static void
lb_plan_page_selection_changed (LbJobPage *page)
{
  LbPlanPage *self = LB_PLAN_PAGE (page);

  show_sheet (self);
  update_status (self);
  update_actions (self);
}

static gboolean
shows_list (LbPlanPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->view_stack), "list") == 0;
}

static void
lb_plan_page_job_set (LbJobPage *page)
{
  LbPlanPage *self = LB_PLAN_PAGE (page);
  LbJob *job = lb_job_page_get_job (page);

  lb_step_tools_set_step (self->tools, -1);
  lb_plan_legend_clear (self->legend);
  lb_plan_canvas_set_job (self->canvas, job);
  /* A list of ten thousand rows is made when somebody first looks at it. */
  lb_pile_table_set_job (self->table, shows_list (self) ? job : NULL);
  lb_pile_finder_set_job (self->finder, job);
  if (find_sheet (self) != NULL)
    g_object_set (find_sheet (self), "job", job, NULL);
  if (job != NULL)
    lb_plan_page_job_changed (page);
  else
    update_actions (self);
}

static void
lb_plan_page_selection_set (LbJobPage *page)
{
  LbPlanPage *self = LB_PLAN_PAGE (page);
  LbSelection *selection = lb_job_page_get_selection (page);

  lb_plan_canvas_set_selection (self->canvas, selection);
  lb_pile_table_set_selection (self->table, selection);
  if (find_sheet (self) != NULL)
    g_object_set (find_sheet (self), "selection", selection, NULL);
  lb_plan_page_selection_changed (page);
}

static void
set_shows_list (LbPlanPage *self, gboolean shows)
{
  if (shows_list (self) == shows)
    return;
  gtk_stack_set_visible_child_name (self->view_stack, shows ? "list" : "plan");
  if (shows)
    lb_pile_table_set_job (self->table, job_of (self));
  gtk_widget_child_focus (gtk_stack_get_visible_child (self->view_stack), GTK_DIR_TAB_FORWARD);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "plan.fit", !shows);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "plan.zoom-in", !shows);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "plan.zoom-out", !shows);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SHOWS_LIST]);
}

/* How many of @piles are not at @step yet. */
static guint
count_unmarked (LbPlanPage *self, const guint *piles, gsize n, LbStep step)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  guint count = 0;

  for (gsize i = 0; i < n; i++)
    count += !(fold->states[piles[i]].done & LB_STEP_BIT (step));
  return count;
}

/* "G7: severed", "5 piles: severed", or that they were before. */
static char *
marked_words (LbPlanPage *self, const guint *piles, gsize n, guint n_marked, LbStep step)
{
  const char *name = g_dgettext (GETTEXT_PACKAGE, lb_step_name (step));
  const char *mark = lb_job_get_fold (job_of (self))->piles[piles[0]].mark;

  if (n == 1 && n_marked == 0)
    /* Translators: a pile and a step, like “G7 was severed already”. */
    return g_strdup_printf (_ ("%s was %s already"), mark, name);
  if (n_marked == 0)
    return g_strdup_printf (_ ("All of them were %s already"), name);
  if (n == 1)
    /* Translators: a pile and the step it reached. */
    return g_strdup_printf (_ ("%s: %s"), mark, name);
  return g_strdup_printf (
    /* Translators: how many piles, and the step they reached. */
    g_dngettext (GETTEXT_PACKAGE, "%u pile: %s", "%u piles: %s", n_marked), n_marked, name);
}

static void
mark_piles (LbPlanPage *self, const guint *piles, gsize n, LbStep step)
{
  const guint n_marked = count_unmarked (self, piles, n, step);
  /* The selection is told of the change and may drop the array. */
  g_autofree guint *own = g_memdup2 (piles, n * sizeof *piles);
  g_autofree char *words = NULL;
  GError *error = NULL;

  if (n_marked > 0 && !lb_job_mark_step (job_of (self), own, n, step, &error)) {
    lb_say_error (GTK_WIDGET (self), _ ("The piles were not marked"), error);
    return;
  }
  words = marked_words (self, own, n, n_marked, step);
  lb_say (GTK_WIDGET (self->view_stack), words, n_marked > 0);
}

static void
touched_cb (LbPlanPage *self, const guint *piles, guint n)
{
  const int step = lb_step_tools_get_step (self->tools);

  if (step >= 0 && job_of (self) != NULL)
    mark_piles (self, piles, n, (LbStep) step);
}

static void
mark_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  LbPlanPage *self = LB_PLAN_PAGE (widget);
  LbStep step;
  const guint *piles;
  gsize n;

  if (!lb_step_from_name (g_variant_get_string (parameter, NULL), &step))
    return;
  piles = lb_selection_get_piles (selection_of (self), &n);
  if (n > 0)
    mark_piles (self, piles, n, step);
}

static void
legend_changed_cb (LbPlanPage *self)
{
  const LbStepSet steps = lb_plan_legend_get_steps (self->legend);

  lb_plan_canvas_set_shown (self->canvas, steps);
  lb_pile_table_set_shown (self->table, steps);
}

static void
tools_changed_cb (LbPlanPage *self)
{
  lb_plan_canvas_set_tool (self->canvas, lb_step_tools_get_step (self->tools));
  update_status (self);
}

static void
put_tool_down (LbPlanPage *self)
{
  lb_step_tools_set_step (self->tools, -1);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
escaped_cb (LbPlanPage *self)
{
  if (lb_step_tools_get_step (self->tools) >= 0)
    put_tool_down (self);
  else if (selection_of (self) != NULL)
    lb_selection_set_current (selection_of (self), -1);
}

static void
open_sheet (LbPlanPage *self)
{
  adw_flap_set_reveal_flap (self->flap, TRUE);
  gtk_widget_child_focus (GTK_WIDGET (self->sheet_stack), GTK_DIR_TAB_FORWARD);
}

static void
show_checks_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  LbPlanPage *self = LB_PLAN_PAGE (widget);

  open_sheet (self);
  if (find_sheet (self) != NULL)
    lb_pile_sheet_show_checks (LB_PILE_SHEET (find_sheet (self)),
                               g_variant_get_string (parameter, NULL));
}

static void
activated_cb (LbPlanPage *self, int pile)
{
  lb_selection_set_current (selection_of (self), pile);
  open_sheet (self);
}

static void
open_sheet_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  open_sheet (LB_PLAN_PAGE (widget));
}

static void
menu_cb (LbPlanPage *self, double x, double y)
{
  const GdkRectangle at = { (int) x, (int) y, 1, 1 };

  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu_popover), &at);
  gtk_popover_popup (GTK_POPOVER (self->menu_popover));
}

static void
close_finder (LbPlanPage *self)
{
  gtk_revealer_set_reveal_child (self->finder_revealer, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
found_cb (LbPlanPage *self, int pile)
{
  /* Somebody who asks for a pile wants to see it, whatever the legend hides. */
  if (!lb_plan_canvas_shows (self->canvas, (guint) pile))
    lb_plan_legend_clear (self->legend);
  close_finder (self);
  lb_selection_set_current (selection_of (self), pile);
  lb_plan_canvas_show_pile (self->canvas, (guint) pile);
}

static void
find_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  LbPlanPage *self = LB_PLAN_PAGE (widget);

  gtk_revealer_set_reveal_child (self->finder_revealer, TRUE);
  lb_pile_finder_begin (self->finder);
}

static void
zoom_in_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  lb_plan_canvas_zoom (LB_PLAN_PAGE (widget)->canvas, ZOOM_STEP);
}

static void
zoom_out_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  lb_plan_canvas_zoom (LB_PLAN_PAGE (widget)->canvas, 1 / ZOOM_STEP);
}

static void
fit_action_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  lb_plan_canvas_fit (LB_PLAN_PAGE (widget)->canvas);
}

static void
lb_plan_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  LbPlanPage *self = LB_PLAN_PAGE (object);

  switch (id) {
  case PROP_SHOWS_LIST:
    g_value_set_boolean (value, shows_list (self));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_plan_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  LbPlanPage *self = LB_PLAN_PAGE (object);

  switch (id) {
  case PROP_SHOWS_LIST:
    set_shows_list (self, g_value_get_boolean (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_plan_page_dispose (GObject *object)
{
  LbPlanPage *self = LB_PLAN_PAGE (object);

  lb_job_page_leave (LB_JOB_PAGE (self));
  g_clear_pointer (&self->menu_popover, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_PLAN_PAGE);
  G_OBJECT_CLASS (lb_plan_page_parent_class)->dispose (object);
}

static void
lb_plan_page_class_init (LbPlanPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbJobPageClass *page_class = LB_JOB_PAGE_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = lb_plan_page_dispose;
  object_class->get_property = lb_plan_page_get_property;
  object_class->set_property = lb_plan_page_set_property;
  page_class->job_changed = lb_plan_page_job_changed;
  page_class->job_set = lb_plan_page_job_set;
  page_class->selection_changed = lb_plan_page_selection_changed;
  page_class->selection_set = lb_plan_page_selection_set;

  props[PROP_SHOWS_LIST] = g_param_spec_boolean ("shows-list", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (LB_TYPE_PILE_FINDER);
  g_type_ensure (LB_TYPE_PILE_TABLE);
  g_type_ensure (LB_TYPE_PLAN_CANVAS);
  g_type_ensure (LB_TYPE_PLAN_LEGEND);
  g_type_ensure (LB_TYPE_STEP_TOOLS);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/lastbent/Lastbent/plan-page.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, canvas);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, done_button);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, finder);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, finder_revealer);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, flap);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, legend);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, pile_menu);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, sheet_stack);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, status_box);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, status_label);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, table);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, tools);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, view_stack);
  gtk_widget_class_bind_template_child (widget_class, LbPlanPage, whole_stack);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_finder);
  gtk_widget_class_bind_template_callback (widget_class, escaped_cb);
  gtk_widget_class_bind_template_callback (widget_class, found_cb);
  gtk_widget_class_bind_template_callback (widget_class, legend_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, menu_cb);
  gtk_widget_class_bind_template_callback (widget_class, put_tool_down);
  gtk_widget_class_bind_template_callback (widget_class, tools_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, touched_cb);

  gtk_widget_class_install_action (widget_class, "plan.find", NULL, find_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.fit", NULL, fit_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.mark", "s", mark_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.open-sheet", NULL, open_sheet_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.show-checks", "s", show_checks_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.zoom-in", NULL, zoom_in_action_cb);
  gtk_widget_class_install_action (widget_class, "plan.zoom-out", NULL, zoom_out_action_cb);
  gtk_widget_class_install_property_action (widget_class, "plan.show-list", "shows-list");
}

static void
lb_plan_page_init (LbPlanPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->menu_popover = gtk_popover_menu_new_from_model (G_MENU_MODEL (self->pile_menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu_popover), FALSE);
  gtk_widget_set_halign (self->menu_popover, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu_popover, GTK_WIDGET (self->canvas));
  /* Or the tip of the pile under the pointer would come up over the menu that was asked for. */
  g_object_bind_property (self->menu_popover, "visible", self->canvas, "has-tooltip",
                          G_BINDING_SYNC_CREATE | G_BINDING_INVERT_BOOLEAN);
  update_actions (self);
}
