/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One page that is filled anew for each figure, and the way back: figures gone through before are a
 * stack. Whatever changes in the job is shown at once, so that a value set in the window of defaults
 * is seen to move the figure.
 *
 * Invariant: the last of "way" is the figure shown. */
#include "desk/basis/figure-window.h"

#include "desk/basis/burn-window.h"
#include "desk/sheet/defaults-window.h"
#include "desk/sheet/sheet-pile.h"
#include "draw/input-words.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A value of so many characters has its place beside a title. */
#define LINE_CHARS 24

struct _LbFigureWindow
{
  AdwWindow parent_instance;

  AdwWindowTitle *title;
  GtkWidget *back_button;
  AdwPreferencesPage *page;
  GPtrArray *groups; /* on the page */

  /* Owned */
  LbJob *job;
  GSignalGroup *job_signals;
  GArray *way; /* LbFigureId */

  GtkWidget *from; /* weak */
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbFigureWindow, lb_figure_window, ADW_TYPE_WINDOW)

static const char *
translated (const char *msgid)
{
  return g_dgettext (GETTEXT_PACKAGE, msgid);
}

/* --- Where an input leads ----------------------------------------------------------------- */

static void show_figure (LbFigureWindow *self);

static void
go_to (LbFigureWindow *self, LbFigureId id)
{
  g_array_append_val (self->way, id);
  show_figure (self);
  gtk_widget_child_focus (GTK_WIDGET (self->page), GTK_DIR_TAB_FORWARD);
}

static void
go_back (GtkWidget *widget, const char *action, GVariant *parameter)
{
  LbFigureWindow *self = LB_FIGURE_WINDOW (widget);

  if (self->way->len <= 1)
    return;
  g_array_set_size (self->way, self->way->len - 1);
  show_figure (self);
  gtk_widget_child_focus (GTK_WIDGET (self->page), GTK_DIR_TAB_FORWARD);
}

static void
ask_fact (LbFigureWindow *self, LbFact fact)
{
  g_autoptr (GtkWidget) from = self->from != NULL ? g_object_ref (self->from) : NULL;

  gtk_window_destroy (GTK_WINDOW (self));
  if (from != NULL)
    gtk_widget_activate_action (from, "sheet.ask-fact", "i", (int) fact);
}

static void
ask_default (LbFigureWindow *self, const LbInput *input)
{
  LbDefaultsWindow *window = lb_defaults_window_new (GTK_WINDOW (self), self->job);

  gtk_window_present (GTK_WINDOW (window));
  lb_defaults_window_ask (window, input);
}

/* NULL for an input that leads nowhere. */
static const char *
icon_of (const LbInput *input)
{
  switch (input->kind) {
  case LB_INPUT_FIGURE:
  case LB_INPUT_LESSON:
    return "go-next-symbolic";
  case LB_INPUT_FACT:
  case LB_INPUT_ASSUMPTION:
  case LB_INPUT_VISIBILITY:
  case LB_INPUT_DIVE_TABLE:
  case LB_INPUT_CRANE_CHART:
  case LB_INPUT_GROUND:
    return "document-edit-symbolic";
  case LB_INPUT_BURNED:
  default:
    return NULL;
  }
}

static void
row_activated_cb (LbFigureWindow *self, AdwActionRow *row)
{
  const LbInput input = *(const LbInput *) g_object_get_data (G_OBJECT (row), "input");

  switch (input.kind) {
  case LB_INPUT_FIGURE:
    go_to (self, (LbFigureId) input.id);
    break;
  case LB_INPUT_LESSON:
    gtk_window_present (GTK_WINDOW (lb_burn_window_new (GTK_WINDOW (self), self->job)));
    break;
  case LB_INPUT_FACT:
    ask_fact (self, (LbFact) input.id);
    break;
  case LB_INPUT_ASSUMPTION:
  case LB_INPUT_VISIBILITY:
  case LB_INPUT_DIVE_TABLE:
  case LB_INPUT_CRANE_CHART:
  case LB_INPUT_GROUND:
    ask_default (self, &input);
    break;
  case LB_INPUT_BURNED:
  default:
    break;
  }
}

/* --- The page ----------------------------------------------------------------------------- */

static AdwPreferencesGroup *
add_group (LbFigureWindow *self, const char *title)
{
  GtkWidget *group = adw_preferences_group_new ();

  if (title != NULL)
    adw_preferences_group_set_title (ADW_PREFERENCES_GROUP (group), title);
  adw_preferences_page_add (self->page, ADW_PREFERENCES_GROUP (group));
  g_ptr_array_add (self->groups, group);
  return ADW_PREFERENCES_GROUP (group);
}

static AdwActionRow *
add_row (AdwPreferencesGroup *group, const char *title, const char *subtitle)
{
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  adw_preferences_group_add (group, row);
  return ADW_ACTION_ROW (row);
}

static void
add_suffix (AdwActionRow *row, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, css_class);
  /* What is short stays in one line, whatever the title beside it takes. */
  gtk_label_set_wrap (GTK_LABEL (label), g_utf8_strlen (text, -1) > LINE_CHARS);
  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_RIGHT);
  adw_action_row_add_suffix (row, label);
}

static void
add_value (LbFigureWindow *self, const LbSheetPile *shown, LbFigureId id)
{
  const LbFigure *figure = &shown->plan.figures[id];
  g_autofree char *value = lb_figure_text (shown->voice, &shown->plan, id);
  g_autofree char *range = lb_figure_range_text (shown->voice, &shown->plan, id);
  g_autofree char *reason = lb_figure_reason_text (shown->voice, shown->pile,
                                                   &shown->fold->assumptions, &shown->plan, id);
  g_autofree char *words = range != NULL ? g_strdup_printf ("%s (%s)", value, range)
                                         : g_strdup (value);
  AdwActionRow *row = add_row (add_group (self, NULL), words, reason);

  gtk_widget_add_css_class (GTK_WIDGET (row), "figure-value");
  if (!isnan (figure->range.likely))
    add_suffix (row, translated (lb_tag_name (figure->tag)), "tag");
}

static void
add_input (LbFigureWindow *self,
           AdwPreferencesGroup *group,
           const LbSheetPile *shown,
           LbFigureId id,
           const LbInput *input)
{
  g_auto (LbInputWords) words = { 0 };

  lb_input_words (shown->voice, shown->pile, lb_fold_basis (shown->fold), &shown->plan, id, input,
                  &words);

  AdwActionRow *row = add_row (group, words.title, words.note);
  g_autofree char *name = g_strdup_printf ("%s: %s", words.title, words.value);
  const char *icon = icon_of (input);

  add_suffix (row, words.value, "numeric");
  if (words.is_missing)
    gtk_widget_add_css_class (GTK_WIDGET (row), "missing");
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words.note, -1);
  if (icon == NULL)
    return;
  adw_action_row_add_suffix (row, gtk_image_new_from_icon_name (icon));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data_full (G_OBJECT (row), "input", g_memdup2 (input, sizeof *input), g_free);
  g_signal_connect_object (row, "activated", G_CALLBACK (row_activated_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
add_inputs (LbFigureWindow *self, const LbSheetPile *shown, LbFigureId id)
{
  AdwPreferencesGroup *group = add_group (self, _ ("It Rests On"));
  LbInput inputs[LB_INPUTS_MAX];
  const gsize n = lb_figure_inputs_in_play (id, shown->pile, &shown->fold->assumptions, inputs);

  for (gsize i = 0; i < n; i++)
    add_input (self, group, shown, id, &inputs[i]);
}

static void
add_rule (LbFigureWindow *self, LbFigureId id)
{
  AdwPreferencesGroup *group = add_group (self, NULL);
  g_autofree char *source = g_strdup_printf (
    /* Translators: whose rule it is; a section of the file docs/methods.md. */
    _ ("%s\ndocs/methods.md, “%s”"), translated (lb_figure_source (id)), lb_figure_section (id));

  gtk_widget_add_css_class (
    GTK_WIDGET (add_row (group, _ ("Formula"), translated (lb_figure_formula (id)))), "rule");
  gtk_widget_add_css_class (GTK_WIDGET (add_row (group, _ ("Source"), source)), "rule");
}

static void
clear_page (LbFigureWindow *self)
{
  for (guint i = 0; i < self->groups->len; i++)
    adw_preferences_page_remove (self->page, g_ptr_array_index (self->groups, i));
  g_ptr_array_set_size (self->groups, 0);
}

static void
show_figure (LbFigureWindow *self)
{
  const LbFigureId id = lb_figure_window_get_figure (self);
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  adw_window_title_set_title (self->title, translated (lb_figure_title (id)));
  adw_window_title_set_subtitle (self->title, shown.pile->mark);
  gtk_window_set_title (GTK_WINDOW (self), translated (lb_figure_title (id)));
  gtk_widget_set_visible (self->back_button, self->way->len > 1);

  clear_page (self);
  add_value (self, &shown, id);
  add_rule (self, id);
  add_inputs (self, &shown, id);
}

/* --- The window --------------------------------------------------------------------------- */

static void
lb_figure_window_dispose (GObject *object)
{
  LbFigureWindow *self = LB_FIGURE_WINDOW (object);

  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  g_clear_object (&self->job_signals);
  g_clear_object (&self->job);
  g_clear_weak_pointer (&self->from);
  G_OBJECT_CLASS (lb_figure_window_parent_class)->dispose (object);
}

static void
lb_figure_window_finalize (GObject *object)
{
  LbFigureWindow *self = LB_FIGURE_WINDOW (object);

  g_array_unref (self->way);
  g_ptr_array_unref (self->groups);
  G_OBJECT_CLASS (lb_figure_window_parent_class)->finalize (object);
}

static void
lb_figure_window_class_init (LbFigureWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_figure_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_figure_window_finalize;
  gtk_widget_class_install_action (widget_class, "figure.back", NULL, go_back);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Left, GDK_ALT_MASK, "figure.back",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lb_figure_window_init (LbFigureWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *header = adw_header_bar_new ();

  self->way = g_array_new (FALSE, FALSE, sizeof (LbFigureId));
  self->groups = g_ptr_array_new ();
  self->title = ADW_WINDOW_TITLE (adw_window_title_new ("", ""));
  self->page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  self->back_button = gtk_button_new_from_icon_name ("go-previous-symbolic");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->back_button), "figure.back");
  gtk_widget_set_tooltip_text (self->back_button, _ ("Back to the figure before"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->back_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Back to the figure before"), -1);
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), self->back_button);
  adw_header_bar_set_title_widget (ADW_HEADER_BAR (header), GTK_WIDGET (self->title));
  gtk_widget_set_vexpand (GTK_WIDGET (self->page), TRUE);
  gtk_box_append (GTK_BOX (box), header);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->page));
  adw_window_set_content (ADW_WINDOW (self), box);
  gtk_window_set_default_size (GTK_WINDOW (self), 600, 600);

  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (show_figure), self);
}

LbFigureWindow *
lb_figure_window_new (GtkWidget *from, LbJob *job, guint pile, LbFigureId id)
{
  GtkRoot *root = from != NULL ? gtk_widget_get_root (from) : NULL;
  LbFigureWindow *self = g_object_new (LB_TYPE_FIGURE_WINDOW, "transient-for",
                                       GTK_IS_WINDOW (root) ? root : NULL, "modal", TRUE, NULL);

  g_set_weak_pointer (&self->from, from);
  self->job = g_object_ref (job);
  self->pile = pile;
  g_array_append_val (self->way, id);
  g_signal_group_set_target (self->job_signals, job);
  show_figure (self);
  return self;
}

LbFigureId
lb_figure_window_get_figure (LbFigureWindow *self)
{
  g_return_val_if_fail (LB_IS_FIGURE_WINDOW (self), LB_FIGURE_TRUE_LENGTH);

  return g_array_index (self->way, LbFigureId, self->way->len - 1);
}
