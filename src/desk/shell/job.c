/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The open job.
 *
 * Purpose: one place where the window's program records and from which all pages read.
 * Data: the book (the file), the ledger (what it says), the fold (what follows). The ledger only
 * grows; the fold, and the plan that is drawn of it, are made again after every change, which
 * takes milliseconds.
 *
 * Invariants:
 * 1. fold is always the fold of the whole ledger and plan that of the fold; those before are freed
 *    only after "changed" has been told, so that a handler may still compare.
 * 2. What lb_job_record() says was recorded is on the disk, in one transaction with the shift
 *    that had to be opened for it.
 * 3. picked is a string of the ledger, which keeps its strings as long as it lives.
 */
#include "desk/shell/job-private.h"

#include "book/difference.h"
#include "book/seal.h"

#include <glib/gi18n-lib.h>
#include <gtk/gtk.h>
#include <locale.h>
#include <string.h>

/* Often enough that two windows on one file feel like one, seldom enough to cost nothing. */
#define WATCH_MS 500

/* Ordinary text is 11 pt at 96 dpi: the default of the platform's settings. */
#define ORDINARY_POINTS 11.0
#define ORDINARY_DPI    96.0

/* A day watch is taken to run from five to five, when nobody has said which watch it is: common
 * practice of a line-up at half past five. */
#define DAY_WATCH_FROM  5
#define DAY_WATCH_UNTIL 17

struct _LbJob
{
  GObject parent_instance;

  GFile *file;
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
  LbPlan *plan;
  char *font;
  char *decimal_point;
  char *thousands;
  char *trouble;

  const char *picked; /* id of the shift somebody picked, NULL for today's */
  char *correction;   /* why the present shift, which is signed, is being corrected; or NULL */
  char *broken_seal;  /* what is wrong with a signature, NULL when they all hold */
  GArray *findings;   /* of the present fold and that shift, NULL before they are asked for */
  int findings_shift;
  gint64 opened_seq; /* last entry when the job was opened */
  LbVoice voice;
  guint watch_id;
  guint n_holds;
};

G_DEFINE_FINAL_TYPE (LbJob, lb_job, G_TYPE_OBJECT)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
update_voice (LbJob *self)
{
  GtkSettings *settings = gtk_settings_get_default ();
  const char *family = NULL;
  double scale = 1;

  if (settings != NULL) {
    g_autofree char *name = NULL;
    g_autoptr (PangoFontDescription) font = NULL;
    int dpi = -1;

    g_object_get (settings, "gtk-font-name", &name, "gtk-xft-dpi", &dpi, NULL);
    font = pango_font_description_from_string (name != NULL ? name : "Sans");
    family = pango_font_description_get_family (font);
    if (pango_font_description_get_size (font) > 0)
      scale = (double) pango_font_description_get_size (font) / PANGO_SCALE / ORDINARY_POINTS;
    if (dpi > 0)
      scale *= dpi / 1024.0 / ORDINARY_DPI;
    g_free (self->font);
    self->font = g_strdup (family != NULL ? family : "Sans");
  } else if (self->font == NULL) {
    self->font = g_strdup ("Sans");
  }

  self->voice = (LbVoice){
    .units = self->fold->units,
    .numbers = { .decimal_point = self->decimal_point, .thousands = self->thousands },
    .font = self->font,
    .scale = CLAMP (scale, 1, 2),
  };
}

static void
refold (LbJob *self)
{
  g_autoptr (LbFold) fold_before = g_steal_pointer (&self->fold);
  g_autoptr (LbPlan) plan_before = g_steal_pointer (&self->plan);

  g_clear_pointer (&self->findings, g_array_unref);
  self->fold = lb_fold_new (self->ledger, G_MAXINT64);
  self->plan = lb_plan_new (self->fold);
  update_voice (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
font_changed_cb (LbJob *self)
{
  update_voice (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
set_trouble (LbJob *self, const char *trouble)
{
  if (g_strcmp0 (self->trouble, trouble) == 0)
    return;
  g_free (self->trouble);
  self->trouble = g_strdup (trouble);
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
watch_cb (gpointer data)
{
  LbJob *self = LB_JOB (data);
  g_autoptr (GError) error = NULL;

  if (self->n_holds > 0)
    return G_SOURCE_CONTINUE;
  if (lb_job_read_on (self, &error))
    set_trouble (self, NULL);
  else if (!g_error_matches (error, LB_BOOK_ERROR, LB_BOOK_ERROR_BUSY))
    set_trouble (self, error->message);
  return G_SOURCE_CONTINUE;
}

/* The locale's own signs, kept: localeconv() may overwrite them. */
static char *
locale_sign (const char *sign, const char *fallback)
{
  char *utf8 = g_locale_to_utf8 (sign, -1, NULL, NULL, NULL);

  return utf8 != NULL ? utf8 : g_strdup (fallback);
}

static void
lb_job_dispose (GObject *object)
{
  LbJob *self = LB_JOB (object);

  g_clear_handle_id (&self->watch_id, g_source_remove);
  g_clear_object (&self->file);
  g_clear_pointer (&self->findings, g_array_unref);
  g_clear_pointer (&self->plan, lb_plan_free);
  g_clear_pointer (&self->fold, lb_fold_free);
  g_clear_pointer (&self->ledger, lb_ledger_free);
  g_clear_pointer (&self->book, lb_book_close);
  G_OBJECT_CLASS (lb_job_parent_class)->dispose (object);
}

static void
lb_job_finalize (GObject *object)
{
  LbJob *self = LB_JOB (object);

  g_free (self->font);
  g_free (self->decimal_point);
  g_free (self->thousands);
  g_free (self->trouble);
  g_free (self->correction);
  g_free (self->broken_seal);
  G_OBJECT_CLASS (lb_job_parent_class)->finalize (object);
}

static void
lb_job_class_init (LbJobClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = lb_job_dispose;
  object_class->finalize = lb_job_finalize;

  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_JOB, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
lb_job_init (LbJob *self)
{
  const struct lconv *locale = localeconv ();

  self->decimal_point = locale_sign (locale->decimal_point, ".");
  self->thousands = locale_sign (locale->thousands_sep, "");
}

LbJob *
lb_job_new_taking (GFile *file, LbBook *book, LbLedger *ledger, LbFold *fold, LbPlan *plan)
{
  LbJob *self = g_object_new (LB_TYPE_JOB, NULL);
  GtkSettings *settings = gtk_settings_get_default ();

  self->file = g_object_ref (file);
  self->book = book;
  self->ledger = ledger;
  self->fold = fold;
  self->plan = plan;
  self->opened_seq = ledger->last_seq;
  update_voice (self);
  if (settings != NULL) {
    g_signal_connect_object (settings, "notify::gtk-font-name", G_CALLBACK (font_changed_cb), self,
                             G_CONNECT_SWAPPED);
    g_signal_connect_object (settings, "notify::gtk-xft-dpi", G_CALLBACK (font_changed_cb), self,
                             G_CONNECT_SWAPPED);
  }
  self->watch_id = g_timeout_add (WATCH_MS, watch_cb, self);

  return self;
}

gboolean
lb_job_read_on (LbJob *self, GError **error)
{
  gboolean has_changed = FALSE;

  if (!lb_book_read_on (self->book, self->ledger, &has_changed, error))
    return FALSE;
  if (has_changed)
    refold (self);
  return TRUE;
}

void
lb_job_hold_watch (LbJob *self)
{
  self->n_holds++;
}

void
lb_job_release_watch (LbJob *self)
{
  g_assert (self->n_holds > 0);
  self->n_holds--;
}

GFile *
lb_job_get_file (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->file;
}

const LbLedger *
lb_job_get_ledger (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->ledger;
}

const LbFold *
lb_job_get_fold (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->fold;
}

const LbPlan *
lb_job_get_plan (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->plan;
}

gboolean
lb_job_is_read_only (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), TRUE);

  return lb_book_is_read_only (self->book);
}

const LbVoice *
lb_job_get_voice (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return &self->voice;
}

const char *
lb_job_get_trouble (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->trouble != NULL ? self->trouble : self->broken_seal;
}

guint32
lb_job_present_day (const char **out_watch)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  const int hour = g_date_time_get_hour (now);
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (now),
                  (GDateMonth) g_date_time_get_month (now), (GDateYear) g_date_time_get_year (now));
  *out_watch = hour >= DAY_WATCH_FROM && hour < DAY_WATCH_UNTIL ? "day" : "night";
  return g_date_get_julian (&date) - (hour < DAY_WATCH_FROM ? 1 : 0);
}

int
lb_job_get_shift_of_today (LbJob *self)
{
  const char *watch;
  guint32 day;
  int found = -1;

  g_return_val_if_fail (LB_IS_JOB (self), -1);

  /* Of several shifts of one day the one opened last: a day shift that runs late goes on. */
  day = lb_job_present_day (&watch);
  for (guint i = 0; i < self->ledger->shifts->len; i++) {
    const LbShift *shift = lb_ledger_shift (self->ledger, i);

    if (shift->day == day &&
        (found < 0 || shift->seq > lb_ledger_shift (self->ledger, (guint) found)->seq))
      found = (int) i;
  }
  return found;
}

int
lb_job_get_shift (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), -1);

  return self->picked != NULL ? lb_ledger_find_shift (self->ledger, self->picked)
                              : lb_job_get_shift_of_today (self);
}

void
lb_job_pick_shift (LbJob *self, int shift)
{
  g_return_if_fail (LB_IS_JOB (self));
  g_return_if_fail (shift < (int) self->ledger->shifts->len);

  self->picked = shift < 0 ? NULL : lb_ledger_shift (self->ledger, (guint) shift)->id;
  g_clear_pointer (&self->correction, g_free);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* After something was stored: it is on the disk, so that a failure to read it back is trouble to
 * be shown, not a failure to record. */
static void
read_back (LbJob *self)
{
  g_autoptr (GError) error = NULL;

  if (!lb_job_read_on (self, &error))
    set_trouble (self, error->message);
}

static gboolean
check_writable (LbJob *self, GError **error)
{
  if (!lb_job_is_read_only (self))
    return TRUE;
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY,
                       "The job was opened for reading; nothing can be recorded");
  return FALSE;
}

gboolean
lb_job_open_shift (LbJob *self, guint32 day, const char *watch, GError **error)
{
  g_autofree char *id = NULL;
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  if (!check_writable (self, error) ||
      !lb_book_open_shift (self->book, day, watch, NULL, &id, error))
    return FALSE;
  read_back (self);
  shift = lb_ledger_find_shift (self->ledger, id);
  if (shift >= 0)
    lb_job_pick_shift (self, shift);
  return TRUE;
}

static gboolean
belongs_to_shift (LbEntryKind kind)
{
  return kind != LB_ENTRY_FACT && kind != LB_ENTRY_SETTING && kind != LB_ENTRY_TAKE_BACK &&
         kind != LB_ENTRY_ANSWER;
}

/* Opens the shift and records in one transaction, so that there is never an empty shift because
 * the entry was refused. */
static gboolean
record_in_new_shift (LbJob *self, LbDraft *drafts, gsize n_drafts, GError **error)
{
  g_autofree char *id = NULL;
  const char *watch;
  const guint32 day = lb_job_present_day (&watch);
  gboolean is_stored;

  if (!lb_book_begin (self->book, error))
    return FALSE;
  is_stored = lb_book_open_shift (self->book, day, watch, NULL, &id, error);
  for (gsize i = 0; is_stored && i < n_drafts; i++)
    if (drafts[i].shift_id == NULL && belongs_to_shift (drafts[i].kind))
      drafts[i].shift_id = id;
  is_stored = is_stored && lb_book_record (self->book, drafts, n_drafts, NULL, error);
  if (!is_stored) {
    lb_book_roll_back (self->book);
    return FALSE;
  }
  return lb_book_commit (self->book, error);
}

static gboolean
is_signed (LbJob *self, int shift)
{
  return shift >= 0 && self->fold->signatures[shift].at_us != 0;
}

/* Whether a draft would change the present shift, which is signed. */
static gboolean
changes_signed (LbJob *self, const LbDraft *draft, int shift)
{
  if (!is_signed (self, shift))
    return FALSE;
  return draft->shift_id != NULL
           ? g_str_equal (draft->shift_id, lb_ledger_shift (self->ledger, (guint) shift)->id)
           : belongs_to_shift (draft->kind);
}

/* The act that the drafts make: after the correction that they may be, and in view of all that is on
 * record. */
static GArray *
make_act (LbJob *self, const LbDraft *drafts, gsize n_drafts)
{
  const int shift = lb_job_get_shift (self);
  GArray *act = g_array_new (FALSE, FALSE, sizeof (LbDraft));

  for (gsize i = 0; i < n_drafts; i++) {
    if (act->len > 0 || self->correction == NULL || !changes_signed (self, &drafts[i], shift))
      continue;

    LbDraft correction = LB_DRAFT_INIT (LB_ENTRY_CORRECTION);
    correction.shift_id = lb_ledger_shift (self->ledger, (guint) shift)->id;
    correction.note = self->correction;
    g_array_append_val (act, correction);
  }
  g_array_append_vals (act, drafts, (guint) n_drafts);
  lb_drafts_know (act, self->ledger, self->fold);
  return act;
}

gboolean
lb_job_record (LbJob *self, const LbDraft *drafts, gsize n_drafts, GError **error)
{
  g_autoptr (GArray) act = NULL;
  const char *shift_id = NULL;
  gboolean needs_shift = FALSE;
  gboolean is_stored;
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);
  g_return_val_if_fail (n_drafts > 0, FALSE);

  if (!check_writable (self, error))
    return FALSE;

  shift = lb_job_get_shift (self);
  if (shift >= 0)
    shift_id = lb_ledger_shift (self->ledger, (guint) shift)->id;
  act = make_act (self, drafts, n_drafts);

  LbDraft *own = &g_array_index (act, LbDraft, 0);
  for (guint i = 0; i < act->len; i++) {
    if (own[i].shift_id != NULL || !belongs_to_shift (own[i].kind))
      continue;
    own[i].shift_id = shift_id;
    needs_shift = needs_shift || shift_id == NULL;
  }

  is_stored = needs_shift ? record_in_new_shift (self, own, act->len, error)
                          : lb_book_record (self->book, own, act->len, NULL, error);
  if (is_stored)
    read_back (self);
  return is_stored;
}

/* Where in the ledger the last entry of an act stands; the act is in it. */
static gint64
last_seq_of (LbJob *self, const char *act)
{
  guint i = self->ledger->entries->len - 1;

  while (!g_str_equal (lb_ledger_entry (self->ledger, i)->act, act))
    i--;
  return lb_ledger_entry (self->ledger, i)->seq;
}

typedef const char *(*NextFunc) (const LbFold *fold, const LbLedger *ledger, int shift);

/* The later of what the present shift offers and what belongs to no shift: facts and settings. Of
 * those, only what was set since the job was opened is taken back by a key. */
static const char *
find_next (LbJob *self, NextFunc next, int *out_shift)
{
  const int shift = lb_job_get_shift (self);
  const gboolean may_touch = shift >= 0 && (!is_signed (self, shift) || self->correction != NULL);
  const char *of_shift = may_touch ? next (self->fold, self->ledger, shift) : NULL;
  const char *of_none = NULL;

  if (self->ledger->last_seq > self->opened_seq)
    of_none = next (self->fold, self->ledger, -1);
  if (of_none != NULL && last_seq_of (self, of_none) <= self->opened_seq)
    of_none = NULL;
  if (of_none != NULL &&
      (of_shift == NULL || last_seq_of (self, of_none) > last_seq_of (self, of_shift)))
  {
    *out_shift = -1;
    return of_none;
  }
  *out_shift = shift;
  return of_shift;
}

/* Redo is over as soon as something new was recorded, whether in the shift or in none. */
static const char *
find_redo (LbJob *self, int *out_shift)
{
  const char *act = find_next (self, lb_fold_next_redo, out_shift);
  const int shift = lb_job_get_shift (self);

  if (act == NULL)
    return NULL;
  for (guint i = self->ledger->entries->len; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (self->ledger, i);

    if (g_str_equal (entry->act, act))
      return act;
    if (lb_entry_is_new (entry) && (entry->shift == shift || entry->shift < 0))
      return NULL;
  }
  return NULL;
}

gboolean
lb_job_can_take_back (LbJob *self)
{
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  return !lb_job_is_read_only (self) && find_next (self, lb_fold_next_take_back, &shift) != NULL;
}

gboolean
lb_job_can_redo (LbJob *self)
{
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  return !lb_job_is_read_only (self) && find_redo (self, &shift) != NULL;
}

static gboolean
record_take_back (LbJob *self, const char *act, int shift, const char *nothing, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_TAKE_BACK);

  if (act == NULL) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED, nothing);
    return FALSE;
  }
  draft.of = act;
  if (shift >= 0)
    draft.shift_id = lb_ledger_shift (self->ledger, (guint) shift)->id;
  return lb_job_record (self, &draft, 1, error);
}

gboolean
lb_job_take_back (LbJob *self, GError **error)
{
  int shift;
  const char *act;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  act = find_next (self, lb_fold_next_take_back, &shift);
  return record_take_back (self, act, shift, _ ("There is nothing to take back"), error);
}

gboolean
lb_job_redo (LbJob *self, GError **error)
{
  int shift;
  const char *act;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);

  act = find_redo (self, &shift);
  return record_take_back (self, act, shift, _ ("There is nothing to do again"), error);
}

gboolean
lb_job_sign (LbJob *self, const char *who, GError **error)
{
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), FALSE);
  g_return_val_if_fail (who != NULL, FALSE);

  shift = lb_job_get_shift (self);
  if (!check_writable (self, error))
    return FALSE;
  if (shift < 0) {
    g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                         _ ("No shift is open, so there is none to sign"));
    return FALSE;
  }

  /* Signing reads the ledger on, so that nothing that came meanwhile is left out. */
  g_autofree char *shift_id = g_strdup (lb_ledger_shift (self->ledger, (guint) shift)->id);
  const gboolean is_stored = lb_book_sign (self->book, self->ledger, shift_id, who, error);
  g_autoptr (GError) reason = NULL;

  if (!lb_book_read_on (self->book, self->ledger, NULL, &reason))
    set_trouble (self, reason->message);
  refold (self);
  return is_stored;
}

const LbSignature *
lb_job_get_signature (LbJob *self)
{
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  shift = lb_job_get_shift (self);
  return is_signed (self, shift) ? &self->fold->signatures[shift] : NULL;
}

const GArray *
lb_job_get_findings (LbJob *self)
{
  int shift;

  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  shift = lb_job_get_shift (self);
  if (self->findings != NULL && self->findings_shift == shift)
    return self->findings;
  g_clear_pointer (&self->findings, g_array_unref);
  self->findings_shift = shift;
  self->findings = lb_findings_new_of_shift (self->ledger, self->fold, shift);
  return self->findings;
}

void
lb_job_set_correction (LbJob *self, const char *reason)
{
  g_return_if_fail (LB_IS_JOB (self));

  g_free (self->correction);
  self->correction = g_strdup (reason);
  g_signal_emit (self, signals[CHANGED], 0);
}

const char *
lb_job_get_correction (LbJob *self)
{
  g_return_val_if_fail (LB_IS_JOB (self), NULL);

  return self->correction;
}

void
lb_job_set_broken_seal (LbJob *self, const char *what)
{
  g_return_if_fail (LB_IS_JOB (self));

  g_free (self->broken_seal);
  self->broken_seal = g_strdup (what);
  g_signal_emit (self, signals[CHANGED], 0);
}
