/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ticking before a dive.
 *
 * Purpose: boxes beside the cautions, ticked one by one as the card is gone through, and stored as
 * one act when all has been.
 * Data: which pile and which of its dives, "" for the next one; what was touched and is not stored
 * yet, by pile, dive and caution, so that a look at another pile costs nobody their ticks.
 *
 * Invariant: a box shows what was touched, else what is on record for that dive.
 */
#include "desk/sheet/dive-checks.h"

#include "book/check-log.h"
#include "book/clock-text.h"
#include "book/gesture.h"
#include "desk/sheet/caution-list.h"
#include "desk/sheet/sheet-pile.h"
#include "desk/shell/say.h"
#include "draw/check-words.h"

#include <glib/gi18n-lib.h>

struct _LbDiveChecks
{
  GtkBox parent_instance;

  /* Template widgets */
  GtkButton *all_button;
  LbCautionList *cautions;
  GtkWidget *dive_box;
  GtkDropDown *dive_drop;
  GtkButton *record_button;
  GtkLabel *sum_label;

  /* Owned */
  LbJob *job;          /* NULL for none */
  char *dive_id;       /* "" for the next dive */
  GPtrArray *dives;    /* ids in the order of the drop-down */
  GHashTable *touched; /* "pile dive key" → whether it is ticked */

  guint pile;
  gboolean is_filling;
};

G_DEFINE_FINAL_TYPE (LbDiveChecks, lb_dive_checks, GTK_TYPE_BOX)

/* --- What is on record, and what was touched ---------------------------------------------- */

static LbCheckLog *
read_log (LbDiveChecks *self)
{
  return lb_check_log_new (lb_job_get_ledger (self->job), lb_job_get_fold (self->job),
                           lb_job_get_shift (self->job));
}

/* The picked dive; NULL for the next one. */
static const LbEntry *
find_dive (LbDiveChecks *self, const LbCheckLog *log)
{
  g_autoptr (GPtrArray) dives = lb_check_log_dives (log, (int) self->pile);

  for (guint i = 0; i < dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (dives, i);

    if (g_str_equal (dive->id, self->dive_id))
      return dive;
  }
  return NULL;
}

static GArray *
read_known (LbDiveChecks *self, const LbCheckLog *log)
{
  const LbEntry *dive = find_dive (self, log);

  return lb_check_log_at (log, (int) self->pile, dive != NULL ? lb_dive_departure (dive) : 0);
}

static char *
touched_key (LbDiveChecks *self, const char *key)
{
  return g_strdup_printf ("%u %s %s", self->pile, self->dive_id, key);
}

static gboolean
is_ticked (LbDiveChecks *self, const GArray *known, const char *key)
{
  const LbCheck *check = lb_check_find (known, key);
  g_autofree char *name = touched_key (self, key);
  gpointer touched;

  if (g_hash_table_lookup_extended (self->touched, name, NULL, &touched))
    return GPOINTER_TO_INT (touched);
  return check != NULL && check->is_ticked;
}

static void
touch (LbDiveChecks *self, const char *key, gboolean ticked)
{
  g_hash_table_insert (self->touched, touched_key (self, key), GINT_TO_POINTER (ticked));
}

/* --- Showing ------------------------------------------------------------------------------ */

static char *
dive_title (const LbEntry *dive)
{
  g_autofree char *clock = lb_clock_to_text (dive->start_us);

  return *clock != '\0' ? g_strdup_printf ("%s · %s", dive->what, clock) : g_strdup (dive->what);
}

/* A shift that is over has no next dive. */
static gboolean
has_next_dive (LbDiveChecks *self)
{
  const int shift = lb_job_get_shift (self->job);

  return shift < 0 || shift == lb_job_get_shift_of_today (self->job);
}

static gboolean
is_same_strings (GPtrArray *one, GPtrArray *other)
{
  if (one->len != other->len)
    return FALSE;
  for (guint i = 0; i < one->len; i++)
    if (!g_str_equal (g_ptr_array_index (one, i), g_ptr_array_index (other, i)))
      return FALSE;
  return TRUE;
}

/* The drop-down gets another list only when there are other dives: somebody may just be picking one. */
static void
set_dives (LbDiveChecks *self, GPtrArray *ids, GPtrArray *titles)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  if (is_same_strings (ids, self->dives))
    return;
  for (guint i = 0; i < titles->len; i++)
    gtk_string_list_append (list, g_ptr_array_index (titles, i));
  g_ptr_array_unref (self->dives);
  self->dives = g_ptr_array_ref (ids);
  gtk_drop_down_set_model (self->dive_drop, G_LIST_MODEL (list));
}

static void
show_dives (LbDiveChecks *self, const LbCheckLog *log)
{
  g_autoptr (GPtrArray) dives = lb_check_log_dives (log, (int) self->pile);
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);
  guint picked = 0;

  if (has_next_dive (self) || dives->len == 0) {
    g_ptr_array_add (ids, g_strdup (""));
    g_ptr_array_add (titles, g_strdup (_ ("Next dive")));
  }
  for (guint i = 0; i < dives->len; i++) {
    const LbEntry *dive = g_ptr_array_index (dives, i);

    if (g_str_equal (dive->id, self->dive_id))
      picked = ids->len;
    g_ptr_array_add (ids, g_strdup (dive->id));
    g_ptr_array_add (titles, dive_title (dive));
  }
  g_free (self->dive_id);
  self->dive_id = g_strdup (g_ptr_array_index (ids, picked));

  self->is_filling = TRUE;
  set_dives (self, ids, titles);
  gtk_drop_down_set_selected (self->dive_drop, picked);
  self->is_filling = FALSE;
  gtk_widget_set_visible (self->dive_box, ids->len > 1);
}

/* What the boxes say now: each caution of the cut, and whether it is ticked. */
static GArray *
read_boxes (LbDiveChecks *self, const LbSheetPile *shown, const GArray *known)
{
  GArray *said = g_array_new (FALSE, FALSE, sizeof (LbCheck));

  for (gsize i = 0; i < shown->plan.n_cautions; i++) {
    const char *key = shown->plan.cautions[i]->key;
    const LbCheck check = { .key = key, .is_ticked = is_ticked (self, known, key) };

    g_array_append_val (said, check);
  }
  return said;
}

static gboolean
has_news (const GArray *said, const GArray *known)
{
  for (guint i = 0; i < said->len; i++) {
    const LbCheck *check = &g_array_index (said, LbCheck, i);
    const LbCheck *before = lb_check_find (known, check->key);

    if (before == NULL ? check->is_ticked : before->is_ticked != check->is_ticked)
      return TRUE;
  }
  return FALSE;
}

static void
show (LbDiveChecks *self)
{
  LbSheetPile shown;

  if (self->job == NULL)
    return;
  lb_sheet_pile_load (&shown, self->job, self->pile);

  g_autoptr (LbCheckLog) log = read_log (self);
  const gboolean can_record = !lb_job_is_read_only (self->job);

  show_dives (self, log);

  g_autoptr (GArray) known = read_known (self, log);
  g_autoptr (GArray) said = read_boxes (self, &shown, known);
  g_autofree char *sum = lb_checks_text (shown.fold, known, 0);

  lb_caution_list_show (self->cautions, self->job, self->pile, said);
  gtk_widget_set_sensitive (GTK_WIDGET (self->cautions), can_record);
  gtk_label_set_label (self->sum_label, sum);
  gtk_widget_set_sensitive (GTK_WIDGET (self->all_button),
                            can_record && lb_checks_n_ticked (said) < said->len);
  gtk_widget_set_sensitive (GTK_WIDGET (self->record_button), can_record && has_news (said, known));
}

/* --- What a person does ------------------------------------------------------------------- */

static void
toggled_cb (LbDiveChecks *self, const char *key, gboolean ticked)
{
  touch (self, key, ticked);
  show (self);
}

static void
all_clicked_cb (LbDiveChecks *self)
{
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  for (gsize i = 0; i < shown.plan.n_cautions; i++)
    touch (self, shown.plan.cautions[i]->key, TRUE);
  show (self);
}

static void
dive_picked_cb (LbDiveChecks *self)
{
  const guint picked = gtk_drop_down_get_selected (self->dive_drop);

  /* GTK may tell of the selection after it was set here. */
  if (self->is_filling || picked >= self->dives->len ||
      g_str_equal (g_ptr_array_index (self->dives, picked), self->dive_id))
    return;
  g_free (self->dive_id);
  self->dive_id = g_strdup (g_ptr_array_index (self->dives, picked));
  show (self);
}

/* What was touched is on record now. */
static void
forget_touched (LbDiveChecks *self, const GPtrArray *names)
{
  for (guint i = 0; i < names->len; i++)
    g_hash_table_remove (self->touched, g_ptr_array_index (names, i));
}

static void
record_clicked_cb (LbDiveChecks *self)
{
  LbSheetPile shown;
  GError *error = NULL;

  lb_sheet_pile_load (&shown, self->job, self->pile);

  g_autoptr (LbCheckLog) log = read_log (self);
  g_autoptr (GArray) known = read_known (self, log);
  g_autoptr (GArray) said = read_boxes (self, &shown, known);
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (LbDraft));
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const LbEntry *dive = find_dive (self, log);

  for (guint i = 0; i < said->len; i++)
    g_ptr_array_add (names, touched_key (self, g_array_index (said, LbCheck, i).key));
  lb_gesture_checks (drafts, shown.fold, self->pile, (const LbCheck *) (gpointer) said->data,
                     said->len, known, dive != NULL ? lb_dive_departure (dive) : 0);
  if (drafts->len == 0)
    return;
  if (lb_job_record (self->job, (const LbDraft *) (gpointer) drafts->data, drafts->len, &error)) {
    forget_touched (self, names);
    show (self);
  } else {
    lb_say_error (GTK_WIDGET (self), _ ("The checks were not recorded"), error);
  }
}

/* --- The class ---------------------------------------------------------------------------- */

static void
lb_dive_checks_dispose (GObject *object)
{
  LbDiveChecks *self = LB_DIVE_CHECKS (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_DIVE_CHECKS);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_dive_checks_parent_class)->dispose (object);
}

static void
lb_dive_checks_finalize (GObject *object)
{
  LbDiveChecks *self = LB_DIVE_CHECKS (object);

  g_free (self->dive_id);
  g_ptr_array_unref (self->dives);
  g_hash_table_unref (self->touched);
  G_OBJECT_CLASS (lb_dive_checks_parent_class)->finalize (object);
}

static void
lb_dive_checks_class_init (LbDiveChecksClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = lb_dive_checks_dispose;
  object_class->finalize = lb_dive_checks_finalize;

  g_type_ensure (LB_TYPE_CAUTION_LIST);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/dive-checks.ui");
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, all_button);
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, cautions);
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, dive_box);
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, dive_drop);
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, record_button);
  gtk_widget_class_bind_template_child (widget_class, LbDiveChecks, sum_label);
  gtk_widget_class_bind_template_callback (widget_class, all_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, dive_picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, toggled_cb);
}

static void
lb_dive_checks_init (LbDiveChecks *self)
{
  self->dive_id = g_strdup ("");
  self->dives = g_ptr_array_new_with_free_func (g_free);
  self->touched = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
lb_dive_checks_show (LbDiveChecks *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_DIVE_CHECKS (self));

  if (g_set_object (&self->job, job))
    g_hash_table_remove_all (self->touched);
  if (self->pile != pile) {
    g_free (self->dive_id);
    self->dive_id = g_strdup ("");
  }
  self->pile = pile;
  show (self);
}

void
lb_dive_checks_pick (LbDiveChecks *self, const char *dive_id)
{
  g_return_if_fail (LB_IS_DIVE_CHECKS (self));
  g_return_if_fail (dive_id != NULL);

  g_free (self->dive_id);
  self->dive_id = g_strdup (dive_id);
  show (self);
}
