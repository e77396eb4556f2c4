/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The line to type in is recorded as one act: bars, steps, minutes, rods and note together, of one
 * pile or of each of several, so that one "take back" takes back the line. What contradicts itself is said under the line, and
 * beside each pile that has it, and blocks nothing: the record must be able to say what happened. */
#include "desk/shift/pile-lines.h"

#include "book/gesture.h"
#include "book/mark-list.h"
#include "desk/shell/say.h"
#include "desk/shift/row-list.h"
#include "draw/day-work.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Steps a person can say a pile reached. */
#define FIRST_STEP LB_STEP_CLEANED

/* More piles than that are marked on the plan, not by one line. */
#define PICKED_MOST 100

struct _LbPileLines
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  GtkEntry *bars_entry;
  GtkListBox *lines_list;
  GtkEntry *minutes_entry;
  GtkEntry *note_entry;
  GtkEntry *pile_entry;
  GtkEntry *rods_entry;
  GtkLabel *said_label;
  GtkBox *steps_box;

  /* Owned */
  LbSelection *selection;
  GtkListStore *marks; /* for completion */
  GPtrArray *shown;    /* what the lines say */

  /* State */
  guint marks_hash; /* of the job's marks, to know when they are others */
  GtkToggleButton *step_buttons[LB_N_STEPS];
};

G_DEFINE_FINAL_TYPE (LbPileLines, lb_pile_lines, LB_TYPE_SHIFT_GROUP)

static const char *
text_of (GtkEntry *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static const LbFold *
fold_of (LbPileLines *self)
{
  return lb_job_get_fold (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
}

static void
say_under (LbPileLines *self, GtkEntry *wrong, const char *text)
{
  GtkEntry *entries[] = { self->pile_entry, self->bars_entry, self->minutes_entry,
                          self->rods_entry };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++) {
    if (entries[i] == wrong)
      gtk_widget_add_css_class (GTK_WIDGET (entries[i]), "error");
    else
      gtk_widget_remove_css_class (GTK_WIDGET (entries[i]), "error");
    gtk_accessible_update_state (
      GTK_ACCESSIBLE (entries[i]), GTK_ACCESSIBLE_STATE_INVALID,
      entries[i] == wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  }
  if (wrong != NULL) {
    gtk_widget_add_css_class (GTK_WIDGET (self->said_label), "error");
    gtk_widget_grab_focus (GTK_WIDGET (wrong));
  } else {
    gtk_widget_remove_css_class (GTK_WIDGET (self->said_label), "error");
  }
  gtk_label_set_text (self->said_label, text);
}

/* "G7: standing · 16 in octagonal, 8 × #8 bars" */
static char *
one_pile_text (LbPileLines *self, guint pile)
{
  const LbPile *facts = &fold_of (self)->piles[pile];
  const LbVoice *voice = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  g_autofree char *kind = lb_pile_text (voice, facts);
  g_autofree char *state = lb_pile_state_text (facts, &fold_of (self)->states[pile]);

  return g_strdup_printf ("%s: %s · %s", facts->mark, state, kind);
}

/* Under the line: what the pile is and where it stands, or how many there are, as soon as the marks
 * are whole. */
static void
pile_changed_cb (LbPileLines *self)
{
  g_autoptr (GArray) piles = lb_mark_list_read (fold_of (self), text_of (self->pile_entry), NULL);
  g_autofree char *said = NULL;

  if (piles != NULL && piles->len == 1)
    said = one_pile_text (self, g_array_index (piles, guint, 0));
  else if (piles != NULL)
    said = g_strdup_printf (ngettext ("%u pile: what is typed counts for each",
                                      "%u piles: what is typed counts for each", piles->len),
                            piles->len);
  say_under (self, NULL, said != NULL ? said : "");
}

static gboolean
read_number (LbPileLines *self, GtkEntry *entry, LbQuantity quantity, double *out_si)
{
  const LbUnits units = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)))->units;
  g_autofree char *said = NULL;
  double si = 0;

  if (*text_of (entry) != '\0') {
    if (!lb_quantity_from_text (quantity, units, text_of (entry), &si, NULL))
      said = g_strdup_printf (_ ("“%s” is not a number; type it as 12 or 12.5"), text_of (entry));
    else if (si < 0)
      said = g_strdup_printf (_ ("“%s” is less than nothing"), text_of (entry));
    if (said != NULL) {
      say_under (self, entry, said);
      return FALSE;
    }
  }
  *out_si = si;

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
draft_bars_and_steps (LbPileLines *self, guint pile, guint n_bars, GArray *drafts)
{
  const LbFold *fold = fold_of (self);
  const gboolean is_severed = n_bars > 0 && lb_gesture_bar_count (drafts, fold, pile, n_bars);

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    if (!gtk_toggle_button_get_active (self->step_buttons[step]))
      continue;
    /* Severed with no bars said means that those left went; with fewer said than were left, it is
     * stored as said and flagged. */
    if (step != LB_STEP_SEVERED || n_bars == 0)
      lb_gesture_step (drafts, fold, pile, step);
    else if (!is_severed)
      add_draft (drafts, LB_ENTRY_STEP, &fold->piles[pile])->what = lb_step_name (step);
  }
}

static void
clear_line (LbPileLines *self)
{
  GtkEntry *entries[] = { self->pile_entry, self->bars_entry, self->minutes_entry, self->rods_entry,
                          self->note_entry };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    gtk_editable_set_text (GTK_EDITABLE (entries[i]), "");
  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++)
    gtk_toggle_button_set_active (self->step_buttons[step], FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->pile_entry));
}

/* What the line says beside its piles and steps. */
typedef struct
{
  guint n_bars;
  double minutes_s, rods;
  const char *note;
} Typed;

static gboolean
read_typed (LbPileLines *self, Typed *out_typed)
{
  g_autofree char *said = NULL;
  double bars;

  if (!read_number (self, self->bars_entry, LB_QUANTITY_COUNT, &bars) ||
      !read_number (self, self->minutes_entry, LB_QUANTITY_TIME, &out_typed->minutes_s) ||
      !read_number (self, self->rods_entry, LB_QUANTITY_COUNT, &out_typed->rods))
    return FALSE;
  if (bars > LB_BARS_MAX || bars > floor (bars)) {
    said = g_strdup_printf (_ ("Bars are counted in whole numbers, up to %d"), LB_BARS_MAX);
    say_under (self, self->bars_entry, said);
    return FALSE;
  }
  out_typed->n_bars = (guint) bars;
  return TRUE;
}

static void
draft_pile (LbPileLines *self, guint pile, const Typed *typed, GArray *drafts)
{
  const LbPile *facts = &fold_of (self)->piles[pile];

  draft_bars_and_steps (self, pile, typed->n_bars, drafts);
  if (typed->minutes_s > 0)
    add_draft (drafts, LB_ENTRY_BURN_TIME, facts)->amount = typed->minutes_s;
  if (typed->rods > 0)
    add_draft (drafts, LB_ENTRY_RODS, facts)->amount = typed->rods;
  if (*typed->note != '\0')
    add_draft (drafts, LB_ENTRY_NOTE, facts)->note = typed->note;
}

static char *
recorded_text (LbPileLines *self, const GArray *piles)
{
  if (piles->len == 1)
    return g_strdup_printf (_ ("%s recorded"),
                            fold_of (self)->piles[g_array_index (piles, guint, 0)].mark);
  return g_strdup_printf (ngettext ("%u pile recorded", "%u piles recorded", piles->len),
                          piles->len);
}

static void
record_line (LbPileLines *self)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autofree char *note = g_strstrip (g_strdup (text_of (self->note_entry)));
  g_autofree char *said = NULL;
  g_autoptr (GError) unknown = NULL;
  g_autoptr (GArray) piles = lb_mark_list_read (fold_of (self), text_of (self->pile_entry),
                                                &unknown);
  Typed typed = { .note = note };
  GError *error = NULL;

  if (piles == NULL) {
    say_under (self, self->pile_entry, unknown->message);
    return;
  }
  if (!read_typed (self, &typed))
    return;
  for (guint i = 0; i < piles->len; i++)
    draft_pile (self, g_array_index (piles, guint, i), &typed, drafts);
  if (drafts->len == 0) {
    say_under (self, self->bars_entry,
               _ ("Say what was done: bars, a step, minutes, rods or a note"));
    return;
  }

  said = recorded_text (self, piles);
  if (!lb_job_record (job, (const LbDraft *) (gpointer) drafts->data, drafts->len, &error)) {
    lb_say_error (GTK_WIDGET (self), _ ("That was not recorded"), error);
    return;
  }
  clear_line (self);
  lb_say (GTK_WIDGET (self), said, TRUE);
}

static char *
work_text (LbPileLines *self, const LbPileWork *work)
{
  const LbVoice *voice = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    if (work->steps & LB_STEP_BIT (step))
      g_ptr_array_add (parts, g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_step_name (step))));
  }
  if (work->is_drawn)
    g_ptr_array_add (parts, g_strdup (_ ("drawn whole")));
  if (work->is_broken)
    g_ptr_array_add (parts, g_strdup (_ ("broke")));
  if (work->n_bars > 0)
    g_ptr_array_add (parts,
                     g_strdup_printf (ngettext ("%u bar", "%u bars", work->n_bars), work->n_bars));
  if (work->trigger_s > 0)
    g_ptr_array_add (parts, lb_voice_quantity (voice, LB_QUANTITY_TIME, work->trigger_s));
  if (work->rods > 0)
    g_ptr_array_add (
      parts, g_strdup_printf (ngettext ("%.0f rod", "%.0f rods", (gulong) work->rods), work->rods));
  if (work->notes->len > 0)
    g_ptr_array_add (parts, g_strdup (work->notes->str));
  g_ptr_array_add (parts, NULL);

  return g_strjoinv (" · ", (char **) parts->pdata);
}

/* What contradicts itself at the pile and what to do about it, NULL when nothing does. */
static char *
flags_text (guint flags)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();

  for (guint flag = 1; flag <= LB_FLAG_MORE_BARS_THAN_HAS; flag <<= 1) {
    if (flags & flag & ~(guint) LB_FLAG_BARS_UNKNOWN)
      g_ptr_array_add (
        parts, (gpointer) g_dgettext (GETTEXT_PACKAGE, lb_pile_flag_words ((LbPileFlag) flag)));
  }
  if (parts->len == 0)
    return NULL;
  g_ptr_array_add (parts, NULL);

  return g_strjoinv (" ", (char **) parts->pdata);
}

typedef struct
{
  const GArray *works; /* LbPileWork, newest first */
  const GPtrArray *said;
  const LbFold *fold;
} Lines;

static GtkWidget *
make_line (guint index, gpointer data)
{
  const Lines *lines = data;
  const int pile = g_array_index (lines->works, LbPileWork, index).pile;
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), lines->fold->piles[pile].mark);
  adw_action_row_set_subtitle (row, g_ptr_array_index (lines->said, index));
  adw_action_row_set_subtitle_lines (row, 0);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  gtk_widget_set_tooltip_text (GTK_WIDGET (row), _ ("Show this pile on the plan"));
  g_object_set_data (G_OBJECT (row), "pile", GINT_TO_POINTER (pile));

  return GTK_WIDGET (row);
}

static char *
line_text (LbPileLines *self, const LbPileWork *work)
{
  g_autofree char *done = work_text (self, work);
  g_autofree char *wrong = flags_text (fold_of (self)->states[work->pile].flags);

  return wrong == NULL ? g_steal_pointer (&done) : g_strdup_printf ("%s\n⚠ %s", done, wrong);
}

/* The piles worked in @shift, none for -1. */
static void
show_lines (LbPileLines *self, int shift)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  g_autoptr (GArray) works = g_array_new (FALSE, FALSE, sizeof (LbPileWork));
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (LbDayWork) work = NULL;
  GPtrArray *keys = g_ptr_array_new_with_free_func (g_free);
  Lines lines = { .works = works, .said = said, .fold = fold_of (self) };

  if (shift >= 0)
    work = lb_day_work_new_of_shift (lb_job_get_voice (job), lb_job_get_ledger (job), lines.fold,
                                     shift);
  for (guint i = work != NULL ? work->piles->len : 0; i-- > 0;) {
    const LbPileWork *line = &g_array_index (work->piles, LbPileWork, i);

    if (line->pile < 0)
      continue;
    g_array_append_val (works, *line);
    g_ptr_array_add (said, line_text (self, line));
    g_ptr_array_add (keys,
                     g_strdup_printf ("%d %s %s", line->pile, lines.fold->piles[line->pile].mark,
                                      (const char *) g_ptr_array_index (said, said->len - 1)));
  }
  if (!lb_row_list_show (self->lines_list, &self->shown, keys, make_line, &lines))
    gtk_widget_grab_focus (GTK_WIDGET (self->pile_entry));
}

static void
row_activated_cb (LbPileLines *self, GtkListBoxRow *row)
{
  if (self->selection == NULL)
    return;
  lb_selection_set_current (self->selection,
                            GPOINTER_TO_INT (g_object_get_data (G_OBJECT (row), "pile")));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page-plan", NULL);
}

static void
fill_marks (LbPileLines *self)
{
  const LbFold *fold = fold_of (self);
  guint hash = fold->n_piles;

  for (guint i = 0; i < fold->n_piles; i++)
    hash = hash * 31 + g_str_hash (fold->piles[i].mark);
  if (hash == self->marks_hash)
    return;
  self->marks_hash = hash;
  gtk_list_store_clear (self->marks);
  for (guint i = 0; i < fold->n_piles; i++)
    gtk_list_store_insert_with_values (self->marks, NULL, -1, 0, fold->piles[i].mark, -1);
}

static void
lb_pile_lines_update (LbShiftGroup *group)
{
  LbPileLines *self = LB_PILE_LINES (group);

  fill_marks (self);
  show_lines (self, lb_job_get_shift (lb_shift_group_get_job (group)));
}

/* The piles picked elsewhere stand in the line, as many as a person may have meant to type. */
static void
selection_changed_cb (LbSelection *selection, LbPileLines *self)
{
  gsize n;
  const guint *piles = lb_selection_get_piles (selection, &n);
  g_autoptr (GString) marks = g_string_new (NULL);

  if (n == 0 || n > PICKED_MOST || lb_shift_group_get_job (LB_SHIFT_GROUP (self)) == NULL)
    return;
  for (gsize i = 0; i < n; i++)
    g_string_append_printf (marks, "%s%s", i > 0 ? ", " : "", fold_of (self)->piles[piles[i]].mark);
  gtk_editable_set_text (GTK_EDITABLE (self->pile_entry), marks->str);
}

static void
lb_pile_lines_dispose (GObject *object)
{
  LbPileLines *self = LB_PILE_LINES (object);

  g_clear_object (&self->selection);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PILE_LINES);

  G_OBJECT_CLASS (lb_pile_lines_parent_class)->dispose (object);
}

static void
lb_pile_lines_finalize (GObject *object)
{
  LbPileLines *self = LB_PILE_LINES (object);

  g_object_unref (self->marks);
  g_ptr_array_unref (self->shown);

  G_OBJECT_CLASS (lb_pile_lines_parent_class)->finalize (object);
}

static void
lb_pile_lines_class_init (LbPileLinesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_lines_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pile_lines_finalize;
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_pile_lines_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-lines.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, bars_entry);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, lines_list);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, minutes_entry);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, note_entry);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, pile_entry);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, rods_entry);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, said_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, steps_box);
  gtk_widget_class_bind_template_callback (widget_class, pile_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_line);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
lb_pile_lines_init (LbPileLines *self)
{
  g_autoptr (GtkEntryCompletion) completion = gtk_entry_completion_new ();

  gtk_widget_init_template (GTK_WIDGET (self));

  self->shown = g_ptr_array_new_with_free_func (g_free);
  self->marks = gtk_list_store_new (1, G_TYPE_STRING);
  gtk_entry_completion_set_model (completion, GTK_TREE_MODEL (self->marks));
  gtk_entry_completion_set_text_column (completion, 0);
  gtk_entry_completion_set_inline_completion (completion, TRUE);
  gtk_entry_completion_set_popup_completion (completion, FALSE);
  gtk_entry_set_completion (self->pile_entry, completion);

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    GtkWidget *button = gtk_toggle_button_new_with_label (
      g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)));

    self->step_buttons[step] = GTK_TOGGLE_BUTTON (button);
    gtk_box_append (self->steps_box, button);
  }
}

void
lb_pile_lines_set_selection (LbPileLines *self, LbSelection *selection)
{
  g_return_if_fail (LB_IS_PILE_LINES (self));

  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_set_object (&self->selection, selection);
  if (selection != NULL)
    g_signal_connect_object (selection, "changed", G_CALLBACK (selection_changed_cb), self, 0);
}
