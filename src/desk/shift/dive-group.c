/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dives of a shift, and what each diver has left. Everything is compared with the no-stop limit
 * less what the diver's earlier dives count; nothing here says how to come up.
 *
 * The log of all dives is made anew when the job changes, which is before any row is. What a diver
 * has left grows with every minute on the surface, so the lines are looked at again while they can
 * be seen; a line says of what time it is. */
#include "desk/shift/dive-group.h"

#include "book/dive-accounts.h"
#include "book/dive-record.h"
#include "desk/shift/dive-form.h"
#include "desk/shift/limit-bar.h"
#include "desk/shift/row-list.h"
#include "draw/check-words.h"
#include "draw/dive-words.h"
#include "draw/plan-words.h"
#include "draw/record-words.h"

#include <glib/gi18n-lib.h>

struct _LbDiveGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  LbDiveForm *form;

  /* Owned */
  LbDiveLog *log;     /* NULL before there is a job */
  LbCheckLog *checks; /* of the shift; likewise */
  GArray *gaps;       /* LbRecordGap, of the shift; likewise */
  GPtrArray *lines_shown;
  guint clock;

  /* Borrowed */
  GtkListBox *lines_list;
};

#define CLOCK_S 20

G_DEFINE_FINAL_TYPE (LbDiveGroup, lb_dive_group, LB_TYPE_SHIFT_GROUP)

/* How many of the checks left open are named on a line. */
#define NAMES_MOST 2

static void
add_part (GPtrArray *parts, char *text)
{
  if (text != NULL)
    g_ptr_array_add (parts, text);
}

/* What was said together with the dive: its details by what they say, the rest in words. */
static void
add_said (GPtrArray *parts, LbJob *job, const LbEntry *dive)
{
  const LbLedger *ledger = lb_job_get_ledger (job);

  for (gint64 seq = dive->seq + 1; seq <= ledger->entries->len; seq++) {
    const LbEntry *entry = lb_ledger_entry_of_seq (ledger, seq);

    if (!g_str_equal (entry->act, dive->act))
      break;
    if (entry->kind == LB_ENTRY_DETAIL &&
        (g_str_equal (entry->what, LB_DETAIL_MODE) || g_str_equal (entry->what, LB_DETAIL_WORK)))
      add_part (parts, g_strdup (lb_detail_value (entry->what, entry->note)));
    else
      add_part (parts,
                lb_entry_text (lb_job_get_voice (job), ledger, lb_job_get_fold (job), entry));
  }
}

static char *
checks_of (LbDiveGroup *self, const LbFold *fold, const LbEntry *dive)
{
  g_autoptr (GArray) checks = lb_check_log_of (self->checks, dive);
  g_autofree char *said = lb_checks_text (fold, checks, NAMES_MOST);

  /* Translators: the dive's pile, and what was ticked before it. */
  return g_strdup_printf (_ ("%s: %s"), fold->piles[dive->pile].mark, said);
}

static char *
lb_dive_group_detail (LbShiftGroup *group, const LbEntry *dive)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  LbJob *job = lb_shift_group_get_job (group);
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  add_said (said, job, dive);
  if (said->len > 0) {
    g_ptr_array_add (said, NULL);
    add_part (lines, g_strjoinv (" · ", (char **) said->pdata));
  }
  if (dive->pile >= 0)
    add_part (lines, checks_of (self, lb_job_get_fold (job), dive));
  add_part (lines, lb_record_gaps_text (self->gaps, dive));
  if (lines->len == 0)
    return NULL;
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **) lines->pdata);
}

/* To the pile's sheet, where the checks of this dive are ticked. */
static void
lb_dive_group_activate (LbShiftGroup *group, const LbEntry *dive)
{
  gtk_widget_activate_action (GTK_WIDGET (group), "win.show-checks", "s", dive->id);
}

static char *
lb_dive_group_suffix_text (LbShiftGroup *group, const LbEntry *dive)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  g_auto (LbDiveAccount) account = { 0 };

  lb_dive_account_make (self->log, self->checks, dive, &account);

  const char *note = lb_dive_compared_note (&account);
  g_autofree char *said = lb_dive_compared_text (&account);

  return g_strdup_printf ("%s %s", said, note != NULL ? note : "");
}

static GtkWidget *
lb_dive_group_suffix (LbShiftGroup *group, const LbEntry *dive)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  g_auto (LbDiveAccount) account = { 0 };

  lb_dive_account_make (self->log, self->checks, dive, &account);

  g_autofree char *said = lb_dive_compared_text (&account);

  if (!lb_dive_is_compared (&account))
    return lb_limit_words_new (said);
  return lb_limit_bar_new (account.bottom_s + account.left.residual_s + account.left.spent_s,
                           account.left.limit_s, said, lb_dive_compared_note (&account));
}

/* One diver of the shift, as a line says it. */
typedef struct
{
  const char *diver; /* borrowed */
  char *said;
} DiverLine;

static void
diver_line_clear (gpointer line)
{
  g_free (((DiverLine *) line)->said);
}

static gboolean
has_line (const GArray *lines, const char *diver)
{
  for (guint i = 0; i < lines->len; i++) {
    if (lb_is_same_diver (g_array_index (lines, DiverLine, i).diver, diver))
      return TRUE;
  }
  return FALSE;
}

/* What the diver of @dive has left now, or when his last dive ends that is still to come. */
static char *
diver_text (LbDiveGroup *self, const LbEntry *dive, gint64 now_us)
{
  const LbVoice *voice = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  const LbEntry *last = lb_dive_log_last (self->log, dive->what);
  const gint64 at_us = MAX (now_us, last != NULL ? MAX (last->end_us, last->up_us) : 0);
  const double typed_m = lb_dive_form_get_depth (self->form);
  const double depth_m = isnan (typed_m) && last != NULL ? last->amount : typed_m;
  g_autoptr (GArray) dives = lb_dive_log_of (self->log, dive->what, NULL, at_us);

  if (dives->len == 0)
    return NULL;

  const LbDiveLeft left = lb_dive_log_left (self->log, dive->what, depth_m, at_us);

  return lb_dive_left_text (voice, &left, depth_m, at_us);
}

/* The divers of the shift that dived in the last hours. */
static GArray *
find_lines (LbDiveGroup *self)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  const LbLedger *ledger = lb_job_get_ledger (job);
  const LbFold *fold = lb_job_get_fold (job);
  const int shift = lb_job_get_shift (job);
  const gint64 now_us = g_get_real_time ();
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (DiverLine));

  g_array_set_clear_func (lines, diver_line_clear);
  for (gsize i = 0; i < fold->n_entries && shift >= 0; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (entry->kind != LB_ENTRY_DIVE || entry->shift != shift || !fold->is_alive[i] ||
        has_line (lines, entry->what))
      continue;

    const DiverLine line = { .diver = entry->what, .said = diver_text (self, entry, now_us) };

    if (line.said != NULL)
      g_array_append_val (lines, line);
  }
  return lines;
}

static GtkWidget *
make_line (guint index, gpointer data)
{
  const DiverLine *line = &g_array_index ((GArray *) data, DiverLine, index);
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), line->diver);
  adw_action_row_set_subtitle (row, line->said);
  return GTK_WIDGET (row);
}

static void
add_lines_list (LbDiveGroup *self)
{
  self->lines_list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->lines_list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->lines_list), "boxed-list");
  gtk_widget_set_margin_top (GTK_WIDGET (self->lines_list), 12);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lines_list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What each diver has left today"), -1);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self), GTK_WIDGET (self->lines_list));
}

static void
show_lines (LbDiveGroup *self)
{
  g_autoptr (GArray) lines = find_lines (self);
  GPtrArray *keys = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < lines->len; i++) {
    const DiverLine *line = &g_array_index (lines, DiverLine, i);

    g_ptr_array_add (keys, g_strdup_printf ("%s %s", line->diver, line->said));
  }
  lb_row_list_show (self->lines_list, &self->lines_shown, keys, make_line, lines);
  gtk_widget_set_visible (GTK_WIDGET (self->lines_list), keys->len > 0);
}

static void
show_left (LbDiveGroup *self)
{
  if (lb_shift_group_get_job (LB_SHIFT_GROUP (self)) == NULL)
    return;
  lb_dive_form_show_left (self->form);
  show_lines (self);
}

static void
form_changed_cb (LbDiveGroup *self)
{
  if (lb_shift_group_get_job (LB_SHIFT_GROUP (self)) != NULL)
    show_lines (self);
}

static gboolean
clock_cb (gpointer data)
{
  show_left (LB_DIVE_GROUP (data));
  return G_SOURCE_CONTINUE;
}

static void
lb_dive_group_map (GtkWidget *widget)
{
  LbDiveGroup *self = LB_DIVE_GROUP (widget);

  GTK_WIDGET_CLASS (lb_dive_group_parent_class)->map (widget);
  show_left (self);
  self->clock = g_timeout_add_seconds (CLOCK_S, clock_cb, self);
}

static void
lb_dive_group_unmap (GtkWidget *widget)
{
  g_clear_handle_id (&LB_DIVE_GROUP (widget)->clock, g_source_remove);
  GTK_WIDGET_CLASS (lb_dive_group_parent_class)->unmap (widget);
}

static void
forget (LbDiveGroup *self)
{
  g_clear_pointer (&self->log, lb_dive_log_free);
  g_clear_pointer (&self->checks, lb_check_log_free);
  g_clear_pointer (&self->gaps, g_array_unref);
}

static void
lb_dive_group_update (LbShiftGroup *group)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  LbJob *job = lb_shift_group_get_job (group);

  forget (self);
  self->log = lb_dive_log_new (lb_job_get_ledger (job), lb_job_get_fold (job));
  self->checks = lb_check_log_new (lb_job_get_ledger (job), lb_job_get_fold (job),
                                   lb_job_get_shift (job));
  self->gaps = lb_dive_record_gaps (lb_job_get_ledger (job), lb_job_get_fold (job),
                                    lb_job_get_shift (job));
  lb_dive_form_update (self->form, group, self->log);
  if (self->lines_list == NULL)
    add_lines_list (self);
  show_lines (self);
}

static void
lb_dive_group_dispose (GObject *object)
{
  LbDiveGroup *self = LB_DIVE_GROUP (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_DIVE_GROUP);
  forget (self);
  g_clear_pointer (&self->lines_shown, g_ptr_array_unref);

  G_OBJECT_CLASS (lb_dive_group_parent_class)->dispose (object);
}

static void
lb_dive_group_class_init (LbDiveGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbShiftGroupClass *group_class = LB_SHIFT_GROUP_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_dive_group_dispose;
  group_class->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_DIVE);
  group_class->update = lb_dive_group_update;
  group_class->detail = lb_dive_group_detail;
  group_class->activate = lb_dive_group_activate;
  group_class->suffix = lb_dive_group_suffix;
  group_class->suffix_text = lb_dive_group_suffix_text;
  widget_class->map = lb_dive_group_map;
  widget_class->unmap = lb_dive_group_unmap;

  g_type_ensure (LB_TYPE_DIVE_FORM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/dive-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, form);
  gtk_widget_class_bind_template_callback (widget_class, form_changed_cb);
}

static void
lb_dive_group_init (LbDiveGroup *self)
{
  self->lines_shown = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}
