/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/fact-field.h"

#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

/* Finer than anything that is surveyed, in every unit. */
#define DECIMALS 4

struct _LbFactField
{
  LbCheckedRow parent_instance;

  LbFact fact;
  LbJob *job;
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbFactField, lb_fact_field, LB_TYPE_CHECKED_ROW)

/* Strings of a copy that lives no longer than the text it was set from. */
static const char *
borrow_text (gpointer pool, const char *text)
{
  return g_string_chunk_insert (pool, text);
}

static gboolean
check_mark (LbJob *job, guint pile, const char *mark, GError **error)
{
  const int found = lb_fold_find_mark (lb_job_get_fold (job), mark);

  if (found < 0 || found == (int) pile)
    return TRUE;
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               _ ("Another pile is called “%s”; give this one a mark of its own"), mark);
  return FALSE;
}

/* Sets the fact on @copy, a copy of the pile. */
static gboolean
try_fact (LbJob *job,
          guint pile,
          LbFact fact,
          const char *text,
          LbUnits units,
          GStringChunk *strings,
          LbPile *out_copy,
          GError **error)
{
  *out_copy = lb_job_get_fold (job)->piles[pile];
  return lb_pile_set (out_copy, fact, text, units, borrow_text, strings, error) &&
         (fact != LB_FACT_MARK || check_mark (job, pile, out_copy->mark, error));
}

gboolean
lb_fact_record (LbJob *job,
                guint pile,
                LbFact fact,
                const char *text,
                LbUnits units,
                GError **error)
{
  GStringChunk *strings = g_string_chunk_new (64);
  g_autofree char *value = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);
  gboolean is_stored = FALSE;
  LbPile copy;

  if (try_fact (job, pile, fact, text, units, strings, &copy, error)) {
    value = lb_pile_get (&copy, fact, LB_UNITS_METRIC);
    draft.pile_id = copy.id;
    draft.what = lb_fact_name (fact);
    draft.note = value;
    is_stored = lb_job_record (job, &draft, 1, error);
  }
  g_string_chunk_free (strings);
  return is_stored;
}

static gboolean
lb_fact_field_check (LbCheckedRow *row, const char *text, char **out_doubt, GError **error)
{
  LbFactField *self = LB_FACT_FIELD (row);
  GStringChunk *strings;
  g_autoptr (GError) doubt = NULL;
  gboolean is_right;
  LbPile copy;

  if (self->job == NULL)
    return TRUE;
  strings = g_string_chunk_new (64);
  is_right = try_fact (self->job, self->pile, self->fact, text, lb_job_get_voice (self->job)->units,
                       strings, &copy, error);
  /* Of facts that disagree anyway each row would say the same. */
  if (is_right && lb_pile_check (&lb_job_get_fold (self->job)->piles[self->pile], NULL) &&
      !lb_pile_check (&copy, &doubt))
    *out_doubt = g_strdup (doubt->message);
  g_string_chunk_free (strings);
  return is_right;
}

static gboolean
lb_fact_field_store (LbCheckedRow *row, const char *text, GError **error)
{
  LbFactField *self = LB_FACT_FIELD (row);

  return lb_fact_record (self->job, self->pile, self->fact, text,
                         lb_job_get_voice (self->job)->units, error);
}

static void
lb_fact_field_dispose (GObject *object)
{
  g_clear_object (&LB_FACT_FIELD (object)->job);
  G_OBJECT_CLASS (lb_fact_field_parent_class)->dispose (object);
}

static void
lb_fact_field_class_init (LbFactFieldClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_fact_field_dispose;
  LB_CHECKED_ROW_CLASS (klass)->check = lb_fact_field_check;
  LB_CHECKED_ROW_CLASS (klass)->store = lb_fact_field_store;
}

static void
lb_fact_field_init (LbFactField *self)
{
}

LbFactField *
lb_fact_field_new (LbFact fact)
{
  LbFactField *self = g_object_new (LB_TYPE_FACT_FIELD, NULL);

  self->fact = fact;
  return self;
}

/* As people read it: the exact text of 4.9 ft kept in metres ends in a row of nines. */
static char *
value_text (const LbPile *pile, LbFact fact, LbUnits units)
{
  g_autofree char *exact = lb_pile_get (pile, fact, units);

  if (lb_fact_quantity (fact) == LB_QUANTITY_COUNT || *exact == '\0')
    return g_steal_pointer (&exact);
  return lb_number_to_text (g_ascii_strtod (exact, NULL), DECIMALS, &LB_NUMBER_PLAIN);
}

void
lb_fact_field_show (LbFactField *self, LbJob *job, guint pile)
{
  const LbUnits units = lb_job_get_voice (job)->units;
  const char *title = g_dgettext (GETTEXT_PACKAGE, lb_fact_title (self->fact));
  const char *unit = lb_quantity_unit (lb_fact_quantity (self->fact), units);
  g_autofree char *whole = NULL;
  g_autofree char *value = NULL;

  g_return_if_fail (LB_IS_FACT_FIELD (self));

  if (job != self->job || pile != self->pile)
    lb_checked_row_revert (LB_CHECKED_ROW (self));
  g_set_object (&self->job, job);
  self->pile = pile;
  whole = *unit == '\0' ? g_strdup (title)
                        /* Translators: what is typed, and its unit. */
                        : g_strdup_printf (_ ("%s (%s)"), title, unit);
  value = value_text (&lb_job_get_fold (job)->piles[pile], self->fact, units);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), whole);
  gtk_editable_set_editable (GTK_EDITABLE (self), !lb_job_is_read_only (job));
  lb_checked_row_show (LB_CHECKED_ROW (self), value);
}
