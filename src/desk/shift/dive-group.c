/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dives of a shift, and what each diver has left. Everything is compared with the no-stop limit
 * less what the diver's earlier dives count; nothing here says how to come up.
 *
 * The log of all dives is made anew when the job changes, which is before any row is. What a diver
 * has left grows with every minute on the surface, so the lines are looked at again while they can
 * be seen; a line says of what time it is. */
#include "desk/shift/dive-group.h"

#include "book/clock-text.h"
#include "book/dive-accounts.h"
#include "desk/shift/limit-bar.h"
#include "desk/shift/row-list.h"
#include "draw/check-words.h"
#include "draw/dive-words.h"
#include "draw/plan-words.h"
#include "trade/bottom-time.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

struct _LbDiveGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  AdwEntryRow *depth_row;
  AdwEntryRow *diver_row;
  AdwEntryRow *left_bottom_row;
  AdwEntryRow *left_surface_row;
  AdwEntryRow *pile_row;
  AdwEntryRow *reached_surface_row;
  AdwActionRow *typed_row;

  /* Owned */
  LbDiveLog *log;     /* NULL before there is a job */
  LbCheckLog *checks; /* of the shift; likewise */
  GPtrArray *lines_shown;
  guint clock;

  /* Borrowed */
  GtkListBox *lines_list;
  GtkWidget *typed_bar; /* NULL while nothing can be compared */
};

#define CLOCK_S 20

G_DEFINE_FINAL_TYPE (LbDiveGroup, lb_dive_group, LB_TYPE_SHIFT_GROUP)

static const char *
text_of (AdwEntryRow *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

/* The shift the times are of: the sheet's, or the one that recording will open. */
static LbShift
shift_of (LbDiveGroup *self)
{
  const LbShift *shift = lb_shift_group_get_shift (LB_SHIFT_GROUP (self));
  LbShift coming = { .seq = 0 };

  if (shift != NULL)
    return *shift;
  coming.day = lb_job_present_day (&coming.watch);

  return coming;
}

/* A time of day; only the last one may be left empty. */
static gboolean
read_time (LbDiveGroup *self, AdwEntryRow *row, gboolean may_be_empty, gint64 *out_us)
{
  const LbShift shift = shift_of (self);
  g_autoptr (GError) error = NULL;
  gint64 us = 0;

  if (!may_be_empty || *text_of (row) != '\0')
    lb_clock_from_text (&shift, text_of (row), &us, &error);
  lb_shift_group_mark_row (GTK_WIDGET (row), error);
  *out_us = us;

  return error == NULL;
}

static gboolean
read_diver (LbDiveGroup *self, const char **out_diver)
{
  g_autoptr (GError) error = NULL;

  if (*text_of (self->diver_row) == '\0')
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("Say who dived: a role or initials"));
  lb_shift_group_mark_row (GTK_WIDGET (self->diver_row), error);
  *out_diver = text_of (self->diver_row);

  return error == NULL;
}

/* Index of the pile worked at, -1 for none said. */
static gboolean
read_pile (LbDiveGroup *self, int *out_pile)
{
  const LbFold *fold = lb_job_get_fold (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  const char *mark = text_of (self->pile_row);
  g_autoptr (GError) error = NULL;

  *out_pile = lb_fold_find_mark (fold, mark);
  if (*out_pile < 0 && *mark != '\0')
    g_set_error (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_UNKNOWN,
                 _ ("There is no pile “%s” in this job; leave it empty for none"), mark);
  lb_shift_group_mark_row (GTK_WIDGET (self->pile_row), error);

  return error == NULL;
}

static gboolean
is_in_order (LbDiveGroup *self, const LbDraft *draft)
{
  GtkWidget *wrong = GTK_WIDGET (self->left_bottom_row);
  g_autoptr (GError) error = NULL;

  if (draft->end_us <= draft->start_us) {
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("The diver left bottom before leaving the surface; check the times"));
  } else if (draft->up_us != 0 && draft->up_us < draft->end_us) {
    g_set_error_literal (
      &error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
      _ ("The diver reached the surface before leaving bottom; check the times"));
    wrong = GTK_WIDGET (self->reached_surface_row);
  }
  if (error == NULL)
    return TRUE;
  lb_shift_group_mark_row (wrong, error);

  return FALSE;
}

static void
record_clicked_cb (LbDiveGroup *self)
{
  LbShiftGroup *group = LB_SHIFT_GROUP (self);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);
  int pile;

  if (!read_diver (self, &draft.what) || !read_pile (self, &pile) ||
      !lb_shift_group_read_amount (group, GTK_WIDGET (self->depth_row), LB_QUANTITY_LENGTH,
                                   &draft.amount) ||
      !read_time (self, self->left_surface_row, FALSE, &draft.start_us) ||
      !read_time (self, self->left_bottom_row, FALSE, &draft.end_us) ||
      !read_time (self, self->reached_surface_row, TRUE, &draft.up_us) ||
      !is_in_order (self, &draft))
    return;
  if (pile >= 0)
    draft.pile_id = lb_job_get_fold (lb_shift_group_get_job (group))->piles[pile].id;
  if (!lb_shift_group_record (group, &draft))
    return;

  /* Diver, pile and depth stay: the next dive is often the same. */
  gtk_editable_set_text (GTK_EDITABLE (self->left_surface_row), "");
  gtk_editable_set_text (GTK_EDITABLE (self->left_bottom_row), "");
  gtk_editable_set_text (GTK_EDITABLE (self->reached_surface_row), "");
  gtk_widget_grab_focus (GTK_WIDGET (self->left_surface_row));
}

/* How many of the checks left open are named on a line. */
#define NAMES_MOST 2

static char *
lb_dive_group_detail (LbShiftGroup *group, const LbEntry *dive)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  const LbFold *fold = lb_job_get_fold (lb_shift_group_get_job (group));
  g_autoptr (GArray) checks = NULL;

  if (dive->pile < 0)
    return NULL;
  checks = lb_check_log_of (self->checks, dive);

  g_autofree char *said = lb_checks_text (fold, checks, NAMES_MOST);

  /* Translators: the dive's pile, and what was ticked before it. */
  return g_strdup_printf (_ ("%s: %s"), fold->piles[dive->pile].mark, said);
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

/* The depth in the form, NAN while there is none. */
static double
typed_depth (LbDiveGroup *self)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  double depth_m = (double) NAN;

  if (!lb_quantity_from_text (LB_QUANTITY_LENGTH, lb_job_get_voice (job)->units,
                              text_of (self->depth_row), &depth_m, NULL) ||
      !(depth_m > 0))
    return (double) NAN;
  return depth_m;
}

/* A time in the form, 0 while there is none. */
static gint64
typed_time (LbDiveGroup *self, AdwEntryRow *row)
{
  const LbShift shift = shift_of (self);
  gint64 us = 0;

  lb_clock_from_text (&shift, text_of (row), &us, NULL);
  return us;
}

/* The dive in the form: what it has, and how much of that the typed bottom time takes. */
static void
show_typed (LbDiveGroup *self)
{
  const LbVoice *voice = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  const double depth_m = typed_depth (self);
  const gint64 start_us = typed_time (self, self->left_surface_row);
  const gboolean is_said = *text_of (self->diver_row) != '\0' && !isnan (depth_m) && start_us != 0;
  g_autofree char *said = NULL;

  if (self->typed_bar != NULL)
    adw_action_row_remove (self->typed_row, g_steal_pointer (&self->typed_bar));
  gtk_widget_set_visible (GTK_WIDGET (self->typed_row), is_said);
  if (!is_said)
    return;

  const LbDiveLeft left = lb_dive_log_left (self->log, text_of (self->diver_row), depth_m,
                                            start_us);
  const double bottom_s = lb_bottom_time (start_us, typed_time (self, self->left_bottom_row));

  said = lb_dive_left_text (voice, &left, depth_m, start_us);
  adw_action_row_set_subtitle (self->typed_row, said);
  if (left.state == LB_DIVE_LEFT_KNOWN && isfinite (left.limit_s) && !isnan (bottom_s)) {
    const gboolean is_past = bottom_s > left.open_s;
    g_autofree char *figures = lb_bottom_time_text (&left, bottom_s);

    self->typed_bar = lb_limit_bar_new (
      bottom_s + left.residual_s + left.spent_s, left.limit_s, figures,
      is_past ? g_dgettext (GETTEXT_PACKAGE, lb_dive_left_reason (LB_DIVE_LEFT_PAST_LIMIT)) : NULL);
    adw_action_row_add_suffix (self->typed_row, self->typed_bar);
  }
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
  const double typed_m = typed_depth (self);
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
  show_typed (self);
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
lb_dive_group_update (LbShiftGroup *group)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);
  LbJob *job = lb_shift_group_get_job (group);

  g_clear_pointer (&self->log, lb_dive_log_free);
  g_clear_pointer (&self->checks, lb_check_log_free);
  self->log = lb_dive_log_new (lb_job_get_ledger (job), lb_job_get_fold (job));
  self->checks = lb_check_log_new (lb_job_get_ledger (job), lb_job_get_fold (job),
                                   lb_job_get_shift (job));
  lb_shift_group_title_row (group, GTK_WIDGET (self->depth_row), _ ("Deepest by pneumo"),
                            LB_QUANTITY_LENGTH);
  if (self->lines_list == NULL)
    add_lines_list (self);
  show_left (self);
}

static void
lb_dive_group_dispose (GObject *object)
{
  LbDiveGroup *self = LB_DIVE_GROUP (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_DIVE_GROUP);
  g_clear_pointer (&self->log, lb_dive_log_free);
  g_clear_pointer (&self->checks, lb_check_log_free);
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

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/dive-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, depth_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, diver_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, left_bottom_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, left_surface_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, pile_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, reached_surface_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, typed_row);
  gtk_widget_class_bind_template_callback (widget_class, record_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_left);
}

static void
lb_dive_group_init (LbDiveGroup *self)
{
  self->lines_shown = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}
