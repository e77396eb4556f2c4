/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines and findings are one list to the person and to row-list.h; which of its rows is which is told
 * by two arrays as long as the list: the line each row is or belongs to, and its finding or NULL.
 * Rows outlive findings, so a row knows its finding by the key. */
#include "desk/shift/finding-rows.h"

#include "desk/shell/ask-word.h"
#include "desk/shell/say.h"
#include "desk/shell/take-back-button.h"
#include "draw/finding-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

LbFindingPlace
lb_finding_stands_at (const LbFinding *finding)
{
  const LbEntry *last = lb_finding_last_entry (finding);

  if (last != NULL && last->kind == LB_ENTRY_DIVE)
    return LB_FINDING_AT_DIVE;
  /* What came in late may be of a kind that has no line of its own. */
  if (finding->pile >= 0 && finding->shift >= 0 && finding->kind != LB_FINDING_AFTER_SIGNING)
    return LB_FINDING_AT_PILE;
  return LB_FINDING_AT_SHEET;
}

const LbEntry *
lb_finding_last_entry (const LbFinding *finding)
{
  g_return_val_if_fail (finding != NULL, NULL);

  return finding->entries[1] != NULL ? finding->entries[1] : finding->entries[0];
}

typedef struct
{
  LbJob *job;
  GtkWidget *from;
  char *key;
} Asked;

static void
asked_free (gpointer data)
{
  Asked *asked = data;

  g_object_unref (asked->job);
  g_object_unref (asked->from);
  g_free (asked->key);
  g_free (asked);
}

/* The finding may be gone by now, put right in another window: then there is nothing to answer. */
static void
answered_cb (const char *reason, gboolean also, gpointer data)
{
  Asked *asked = data;
  const LbFinding *finding = lb_findings_find (lb_job_get_findings (asked->job), asked->key);
  GError *error = NULL;

  if (finding != NULL && !lb_job_answer (asked->job, finding, reason, &error))
    lb_say_error (asked->from, _ ("That was not stored"), error);
}

static void
answer_clicked_cb (GtkButton *button, LbJob *job)
{
  const char *key = g_object_get_data (G_OBJECT (button), "key");
  const LbFinding *finding = lb_findings_find (lb_job_get_findings (job), key);
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (button)));
  Asked *asked;

  if (finding == NULL)
    return;

  g_autofree char *text = lb_finding_text (lb_job_get_voice (job), lb_job_get_ledger (job),
                                           lb_job_get_fold (job), finding);
  const LbQuestion question = {
    .heading = _ ("Say Why It Is So"),
    .body = text,
    .label = _ ("Why"),
    .accept = _ ("_Answer"),
  };

  /* Recording makes the rows again, and this button is gone then. */
  asked = g_new (Asked, 1);
  *asked = (Asked){
    .job = g_object_ref (job),
    .from = g_object_ref (root),
    .key = g_strdup (key),
  };
  lb_ask_word (root, &question, answered_cb, asked, asked_free);
}

static GtkWidget *
make_answer_button (LbJob *job, const LbFinding *finding, const char *text)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Answer…"));
  /* Translators: a finding in words. */
  g_autofree char *name = g_strdup_printf (_ ("Answer: %s"), text);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_sensitive (button, !lb_job_is_read_only (job));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data_full (G_OBJECT (button), "key", g_strdup (finding->key), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (answer_clicked_cb), job, 0);
  return button;
}

static GtkWidget *
make_finding_row (LbJob *job, const LbFinding *finding)
{
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());
  g_autofree char *text = lb_finding_text (lb_job_get_voice (job), lb_job_get_ledger (job),
                                           lb_job_get_fold (job), finding);
  g_autofree char *answer = lb_finding_answer_text (finding);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  adw_action_row_set_title_lines (row, 0);
  adw_action_row_set_subtitle (row, answer != NULL ? answer : lb_finding_advice (finding->kind));
  adw_action_row_set_subtitle_lines (row, 0);
  adw_action_row_set_icon_name (row,
                                answer != NULL ? "emblem-ok-symbolic" : "dialog-warning-symbolic");
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  if (answer == NULL) {
    gtk_widget_add_css_class (GTK_WIDGET (row), "finding");
    adw_action_row_add_suffix (row, make_answer_button (job, finding, text));
  } else {
    adw_action_row_add_suffix (row, lb_take_back_button_new (job, finding->answer->act, answer));
  }
  return GTK_WIDGET (row);
}

/* The list as it is shown. */
typedef struct
{
  LbJob *job;
  LbRowMake make;
  gpointer data;
  GArray *lines;       /* guint, one a row */
  GPtrArray *findings; /* const LbFinding or NULL, one a row */
} Shown;

static GtkWidget *
make_row (guint index, gpointer data)
{
  const Shown *shown = data;
  const LbFinding *finding = g_ptr_array_index (shown->findings, index);

  if (finding != NULL)
    return make_finding_row (shown->job, finding);
  return shown->make (g_array_index (shown->lines, guint, index), shown->data);
}

/* All that the row of a finding shows. */
static char *
key_of (LbJob *job, const LbFinding *finding)
{
  g_autofree char *text = lb_finding_text (lb_job_get_voice (job), lb_job_get_ledger (job),
                                           lb_job_get_fold (job), finding);

  return g_strdup_printf ("%s %s %s", finding->key, text,
                          finding->answer != NULL ? finding->answer->id : "");
}

static void
add_row (Shown *shown, GPtrArray *keys, guint line, const LbFinding *finding, char *key)
{
  g_array_append_val (shown->lines, line);
  g_ptr_array_add (shown->findings, (gpointer) finding);
  g_ptr_array_add (keys, key);
}

gboolean
lb_finding_rows_show (LbJob *job,
                      GtkListBox *list,
                      GPtrArray **shown,
                      GPtrArray *keys,
                      LbRowMake make,
                      LbFindingIsOf is_of,
                      gpointer data)
{
  const GArray *findings = lb_job_get_findings (job);
  g_autoptr (GPtrArray) lines = keys;
  g_autoptr (GArray) line_of = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GPtrArray) finding_of = g_ptr_array_new ();
  GPtrArray *all = g_ptr_array_new_with_free_func (g_free);
  Shown rows = {
    .job = job,
    .make = make,
    .data = data,
    .lines = line_of,
    .findings = finding_of,
  };

  for (guint line = 0; line < lines->len; line++) {
    add_row (&rows, all, line, NULL, g_strdup (g_ptr_array_index (lines, line)));
    for (guint i = 0; i < findings->len; i++) {
      const LbFinding *finding = &g_array_index (findings, LbFinding, i);

      if (is_of (finding, line, data))
        add_row (&rows, all, line, finding, key_of (job, finding));
    }
  }
  return lb_row_list_show (list, shown, all, make_row, &rows);
}

guint
lb_finding_rows_show_sheet (LbJob *job, GtkListBox *list, GPtrArray **shown)
{
  const GArray *findings = lb_job_get_findings (job);
  g_autoptr (GArray) line_of = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GPtrArray) finding_of = g_ptr_array_new ();
  GPtrArray *all = g_ptr_array_new_with_free_func (g_free);
  Shown rows = { .job = job, .lines = line_of, .findings = finding_of };

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (lb_finding_stands_at (finding) == LB_FINDING_AT_SHEET)
      add_row (&rows, all, 0, finding, key_of (job, finding));
  }
  lb_row_list_show (list, shown, all, make_row, &rows);
  return finding_of->len;
}
