/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The line to type in is recorded as one act: bars, steps, minutes, rods, oxygen and note together, of
 * one pile or of each of several, so that one "take back" takes back the line. What was recorded last
 * can be said again of the next pile in the bent, all but the note, which is about its own pile. */
#include "desk/shift/pile-form.h"

#include "book/gesture.h"
#include "book/mark-list.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Steps a person can say a pile reached. */
#define FIRST_STEP LB_STEP_CLEANED

/* More piles than that are marked on the plan, not by one line. */
#define PICKED_MOST 100

/* What the line says beside its piles. */
typedef struct
{
  guint n_bars;
  LbStepSet steps;
  double minutes_s, rods, oxygen_m3;
  char *note; /* owned */
} Typed;

struct _LbPileForm
{
  GtkBox parent_instance;

  /* Template widgets */
  LbField *bars_field;
  LbField *minutes_field;
  LbField *note_field;
  LbField *oxygen_field;
  LbField *pile_field;
  LbField *rods_field;
  GtkLabel *said_label;
  GtkButton *same_button;
  GtkBox *steps_box;

  /* Borrowed */
  LbShiftGroup *group; /* NULL before there is a job */

  /* State */
  guint marks_hash; /* of the job's marks, to know when they are others */
  GtkToggleButton *step_buttons[LB_N_STEPS];
  Typed last;    /* what was recorded last; steps, numbers */
  char *last_id; /* at which pile, the last of them; NULL before anything was */
};

G_DEFINE_FINAL_TYPE (LbPileForm, lb_pile_form, GTK_TYPE_BOX)

static const char *
text_of (LbField *field)
{
  return lb_field_get_text (field);
}

static LbJob *
job_of (LbPileForm *self)
{
  return lb_shift_group_get_job (self->group);
}

static const LbFold *
fold_of (LbPileForm *self)
{
  return lb_job_get_fold (job_of (self));
}

static void
say_under (LbPileForm *self, const char *text)
{
  gtk_label_set_text (self->said_label, text != NULL ? text : "");
}

/* What is wrong stands under the line too, where the eye is. */
static gboolean
refuse (LbPileForm *self, LbField *wrong, const char *said)
{
  g_autoptr (GError) error = g_error_new_literal (LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, said);

  lb_field_mark (wrong, error);
  gtk_widget_add_css_class (GTK_WIDGET (self->said_label), "error");
  say_under (self, said);
  return FALSE;
}

static void
forget_faults (LbPileForm *self)
{
  LbField *const fields[] = { self->pile_field, self->bars_field,   self->minutes_field,
                              self->rods_field, self->oxygen_field, self->note_field };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    lb_field_mark (fields[i], NULL);
  gtk_widget_remove_css_class (GTK_WIDGET (self->said_label), "error");
}

/* "G7: standing · 16 in octagonal, 8 × #8 bars" */
static char *
one_pile_text (LbPileForm *self, guint pile)
{
  const LbPile *facts = &fold_of (self)->piles[pile];
  const LbVoice *voice = lb_job_get_voice (job_of (self));
  g_autofree char *kind = lb_pile_text (voice, facts);
  g_autofree char *state = lb_pile_state_text (facts, &fold_of (self)->states[pile]);

  return g_strdup_printf ("%s: %s · %s", facts->mark, state, kind);
}

/* Under the line: what the pile is and where it stands, or how many there are, as soon as the marks
 * are whole. */
static void
pile_changed_cb (LbPileForm *self)
{
  g_autoptr (GArray) piles = NULL;
  g_autofree char *said = NULL;

  if (self->group == NULL)
    return;
  piles = lb_mark_list_read (fold_of (self), text_of (self->pile_field), NULL);
  if (piles != NULL && piles->len == 1)
    said = one_pile_text (self, g_array_index (piles, guint, 0));
  else if (piles != NULL)
    said = g_strdup_printf (ngettext ("%u pile: what is typed counts for each",
                                      "%u piles: what is typed counts for each", piles->len),
                            piles->len);
  forget_faults (self);
  say_under (self, said);
}

static gboolean
read_number (LbPileForm *self, LbField *field, LbQuantity quantity, double *out_si)
{
  const LbUnits units = lb_job_get_voice (job_of (self))->units;
  g_autofree char *said = NULL;
  double si = 0;

  if (*text_of (field) != '\0') {
    if (!lb_quantity_from_text (quantity, units, text_of (field), &si, NULL))
      said = g_strdup_printf (_ ("“%s” is not a number; type it as 12 or 12.5"), text_of (field));
    else if (si < 0)
      said = g_strdup_printf (_ ("“%s” is less than nothing"), text_of (field));
    if (said != NULL)
      return refuse (self, field, said);
  }
  *out_si = si;

  return TRUE;
}

static LbStepSet
pressed_steps (LbPileForm *self)
{
  LbStepSet steps = 0;

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++)
    if (gtk_toggle_button_get_active (self->step_buttons[step]))
      steps |= LB_STEP_BIT (step);
  return steps;
}

static gboolean
read_typed (LbPileForm *self, Typed *out_typed)
{
  double bars;

  if (!read_number (self, self->bars_field, LB_QUANTITY_COUNT, &bars) ||
      !read_number (self, self->minutes_field, LB_QUANTITY_TIME, &out_typed->minutes_s) ||
      !read_number (self, self->rods_field, LB_QUANTITY_COUNT, &out_typed->rods) ||
      !read_number (self, self->oxygen_field, LB_QUANTITY_GAS, &out_typed->oxygen_m3))
    return FALSE;
  if (bars > LB_BARS_MAX || bars > floor (bars)) {
    g_autofree char *said = g_strdup_printf (_ ("Bars are counted in whole numbers, up to %d"),
                                             LB_BARS_MAX);

    return refuse (self, self->bars_field, said);
  }
  out_typed->n_bars = (guint) bars;
  out_typed->steps = pressed_steps (self);
  return TRUE;
}

static LbDraft *
add_draft (GArray *drafts, LbEntryKind kind, const LbPile *pile)
{
  LbDraft draft = LB_DRAFT_INIT (kind);

  draft.pile_id = pile->id;
  g_array_append_val (drafts, draft);

  return &g_array_index (drafts, LbDraft, drafts->len - 1);
}

static void
draft_bars_and_steps (LbPileForm *self, guint pile, const Typed *typed, GArray *drafts)
{
  const LbFold *fold = fold_of (self);
  const gboolean is_severed = typed->n_bars > 0 &&
                              lb_gesture_bar_count (drafts, fold, pile, typed->n_bars);

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    if ((typed->steps & LB_STEP_BIT (step)) == 0)
      continue;
    /* Severed with no bars said means that those left went; with fewer said than were left, it is
     * stored as said and flagged. */
    if (step != LB_STEP_SEVERED || typed->n_bars == 0)
      lb_gesture_step (drafts, fold, pile, step);
    else if (!is_severed)
      add_draft (drafts, LB_ENTRY_STEP, &fold->piles[pile])->what = lb_step_name (step);
  }
}

static void
draft_pile (LbPileForm *self, guint pile, const Typed *typed, GArray *drafts)
{
  const LbPile *facts = &fold_of (self)->piles[pile];

  draft_bars_and_steps (self, pile, typed, drafts);
  if (typed->minutes_s > 0)
    add_draft (drafts, LB_ENTRY_BURN_TIME, facts)->amount = typed->minutes_s;
  if (typed->rods > 0)
    add_draft (drafts, LB_ENTRY_RODS, facts)->amount = typed->rods;
  if (typed->oxygen_m3 > 0)
    add_draft (drafts, LB_ENTRY_OXYGEN, facts)->amount = typed->oxygen_m3;
  if (*typed->note != '\0')
    add_draft (drafts, LB_ENTRY_NOTE, facts)->note = typed->note;
}

static char *
recorded_text (LbPileForm *self, const guint *piles, guint n)
{
  if (n == 1)
    return g_strdup_printf (_ ("%s recorded"), fold_of (self)->piles[piles[0]].mark);
  return g_strdup_printf (ngettext ("%u pile recorded", "%u piles recorded", n), n);
}

/* Records @typed of each of @piles; says so, or why not. */
static gboolean
record (LbPileForm *self, const guint *piles, guint n, const Typed *typed)
{
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autofree char *said = recorded_text (self, piles, n);
  g_autofree char *last_id = g_strdup (fold_of (self)->piles[piles[n - 1]].id);
  const Typed kept = { typed->n_bars, typed->steps,     typed->minutes_s,
                       typed->rods,   typed->oxygen_m3, NULL };

  for (guint i = 0; i < n; i++)
    draft_pile (self, piles[i], typed, drafts);
  if (drafts->len == 0)
    return refuse (self, self->bars_field,
                   _ ("Say what was done: bars, a step, minutes, rods, oxygen or a note"));
  if (!lb_shift_group_record_all (self->group, (const LbDraft *) (gpointer) drafts->data,
                                  drafts->len))
    return FALSE;
  self->last = kept;
  g_free (self->last_id);
  self->last_id = g_steal_pointer (&last_id);
  lb_say (GTK_WIDGET (self), said, TRUE);
  return TRUE;
}

static void
clear_line (LbPileForm *self)
{
  LbField *const fields[] = { self->bars_field,   self->minutes_field, self->rods_field,
                              self->oxygen_field, self->note_field,    self->pile_field };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    lb_field_set_text (fields[i], "");
  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++)
    gtk_toggle_button_set_active (self->step_buttons[step], FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->pile_field));
}

/* The pile that "the same" would be said of, -1 for none. */
static int
next_pile (LbPileForm *self)
{
  const LbFold *fold = fold_of (self);

  for (guint i = 0; i < fold->n_piles && self->last_id != NULL; i++)
    if (g_str_equal (fold->piles[i].id, self->last_id))
      return lb_mark_list_next (fold, i);
  return -1;
}

static void
show_same (LbPileForm *self)
{
  const int next = next_pile (self);
  g_autofree char *label = NULL;

  /* Translators: a button: what was recorded last is recorded of one more pile, with its mark. */
  label = next >= 0 ? g_strdup_printf (_ ("Same for %s"), fold_of (self)->piles[next].mark)
                    : g_strdup (_ ("Same for Next"));
  gtk_button_set_label (self->same_button, label);
  gtk_widget_set_sensitive (GTK_WIDGET (self->same_button), next >= 0);
}

static void
record_line (LbPileForm *self)
{
  g_autofree char *note = g_strstrip (g_strdup (text_of (self->note_field)));
  g_autoptr (GError) unknown = NULL;
  g_autoptr (GArray) piles = NULL;
  Typed typed = { .note = note };

  if (self->group == NULL)
    return;
  forget_faults (self);
  piles = lb_mark_list_read (fold_of (self), text_of (self->pile_field), &unknown);
  if (piles == NULL) {
    refuse (self, self->pile_field, unknown->message);
    return;
  }
  if (read_typed (self, &typed) &&
      record (self, &g_array_index (piles, guint, 0), piles->len, &typed))
  {
    clear_line (self);
    show_same (self);
  }
}

static void
record_same (LbPileForm *self)
{
  const int next = self->group != NULL ? next_pile (self) : -1;
  const guint pile = (guint) next;
  char nothing[] = "";
  Typed typed = self->last;

  if (next < 0)
    return;
  typed.note = nothing;
  if (record (self, &pile, 1, &typed))
    show_same (self);
}

static gboolean
same_shortcut_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  record_same (LB_PILE_FORM (widget));
  return GDK_EVENT_STOP;
}

static void
offer_marks (LbPileForm *self)
{
  const LbFold *fold = fold_of (self);
  g_autoptr (GPtrArray) marks = NULL;
  guint hash = fold->n_piles;

  for (guint i = 0; i < fold->n_piles; i++)
    hash = hash * 31 + g_str_hash (fold->piles[i].mark);
  if (hash == self->marks_hash)
    return;
  self->marks_hash = hash;
  marks = g_ptr_array_sized_new (fold->n_piles + 1);
  for (guint i = 0; i < fold->n_piles; i++)
    g_ptr_array_add (marks, (gpointer) fold->piles[i].mark);
  g_ptr_array_add (marks, NULL);
  lb_field_complete (self->pile_field, (const char *const *) marks->pdata);
}

void
lb_pile_form_update (LbPileForm *self, LbShiftGroup *group)
{
  g_return_if_fail (LB_IS_PILE_FORM (self));
  g_return_if_fail (LB_IS_SHIFT_GROUP (group));

  self->group = group;
  lb_shift_group_caption (group, self->oxygen_field, _ ("Oxygen"), LB_QUANTITY_GAS);
  offer_marks (self);
  show_same (self);
}

void
lb_pile_form_pick (LbPileForm *self, const guint *piles, gsize n)
{
  g_autoptr (GString) marks = g_string_new (NULL);

  g_return_if_fail (LB_IS_PILE_FORM (self));

  if (n == 0 || n > PICKED_MOST || self->group == NULL)
    return;
  for (gsize i = 0; i < n; i++)
    g_string_append_printf (marks, "%s%s", i > 0 ? ", " : "", fold_of (self)->piles[piles[i]].mark);
  lb_field_set_text (self->pile_field, marks->str);
}

static gboolean
lb_pile_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (LB_PILE_FORM (widget)->pile_field));
}

static void
lb_pile_form_dispose (GObject *object)
{
  LbPileForm *self = LB_PILE_FORM (object);

  self->group = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PILE_FORM);
  g_clear_pointer (&self->last_id, g_free);

  G_OBJECT_CLASS (lb_pile_form_parent_class)->dispose (object);
}

static void
lb_pile_form_class_init (LbPileFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_form_dispose;
  widget_class->grab_focus = lb_pile_form_grab_focus;

  g_type_ensure (LB_TYPE_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/lastbent/Lastbent/pile-form.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, bars_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, minutes_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, note_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, oxygen_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, pile_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, rods_field);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, said_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, same_button);
  gtk_widget_class_bind_template_child (widget_class, LbPileForm, steps_box);
  gtk_widget_class_bind_template_callback (widget_class, pile_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_line);
  gtk_widget_class_bind_template_callback (widget_class, record_same);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK, same_shortcut_cb,
                                NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_Enter, GDK_CONTROL_MASK, same_shortcut_cb,
                                NULL);
}

static void
lb_pile_form_init (LbPileForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    GtkWidget *button = gtk_toggle_button_new_with_label (
      g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)));

    self->step_buttons[step] = GTK_TOGGLE_BUTTON (button);
    gtk_box_append (self->steps_box, button);
  }
}
