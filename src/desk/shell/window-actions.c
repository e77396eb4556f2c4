/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The actions of a window. Those that a page carries out are forwarded to it by the page's own
 * action, so that the window knows no page's inside. */
#include "desk/shell/window-actions.h"

#include "desk/basis/burn-window.h"
#include "desk/history/pier-window.h"
#include "desk/print/print.h"
#include "desk/sheet/defaults-window.h"
#include "desk/shell/choose-file.h"
#include "desk/shell/copies-window.h"
#include "desk/shell/pages.h"
#include "desk/shell/recover-file.h"
#include "desk/shell/say.h"
#include "desk/take/grid-window.h"
#include "desk/take/join-window.h"
#include "desk/take/send-window.h"
#include "desk/take/take-list-window.h"

#include <glib/gi18n-lib.h>

static void
take_back_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  GError *error = NULL;

  if (!lb_job_take_back (lb_window_get_job (self), &error))
    lb_say_error (GTK_WIDGET (self), _ ("Nothing was taken back"), error);
}

static void
redo_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  GError *error = NULL;

  if (!lb_job_redo (lb_window_get_job (self), &error))
    lb_say_error (GTK_WIDGET (self), _ ("Nothing was done again"), error);
}

static void
units_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  GError *error = NULL;

  draft.what = "units";
  draft.note = g_variant_get_string (value, NULL);
  if (!lb_job_record (lb_window_get_job (self), &draft, 1, &error))
    lb_say_error (GTK_WIDGET (self), _ ("The units were not changed"), error);
}

static void
page_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  lb_window_show_page (LB_WINDOW (data), g_action_get_name (G_ACTION (action)) + strlen ("page-"));
}

static void
saved_copy_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbWindow) self = LB_WINDOW (data);
  GError *error = NULL;

  if (lb_job_copy_finish (LB_JOB (source), result, &error))
    lb_say (GTK_WIDGET (self), _ ("The copy is saved"), FALSE);
  else
    lb_say_error (GTK_WIDGET (self), _ ("The copy was not saved"), error);
}

static void
copy_chosen_cb (GFile *file, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_job (self) != NULL)
    lb_job_copy_async (lb_window_get_job (self), file, NULL, saved_copy_cb, g_object_ref (self));
}

static void
save_copy_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  g_autofree char *base = g_file_get_basename (lb_window_get_file (self));
  /* Translators: put before a file's name. */
  g_autofree char *name = g_strdup_printf (_ ("Copy of %s"), base);
  const LbChooseFile what = {
    .parent = GTK_WINDOW (self),
    .title = _ ("Save a Copy"),
    .accept = _ ("_Save"),
    .name = name,
  };

  lb_choose_file (&what, copy_chosen_cb, G_OBJECT (self));
}

static void
list_chosen_cb (GFile *file, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_job (self) != NULL)
    gtk_window_present (
      GTK_WINDOW (lb_take_list_window_new (GTK_WINDOW (self), lb_window_get_job (self), file)));
}

static void
take_list_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  lb_choose_list (GTK_WINDOW (data), _ ("Take a Pile List"), _ ("_Look At It"), list_chosen_cb,
                  G_OBJECT (data));
}

void
lb_window_join (LbWindow *self, GFile *file)
{
  g_return_if_fail (LB_IS_WINDOW (self) && lb_window_get_job (self) != NULL);
  g_return_if_fail (G_IS_FILE (file));

  gtk_window_present (
    GTK_WINDOW (lb_join_window_new (GTK_WINDOW (self), lb_window_get_job (self), file)));
}

static void
send_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  gtk_window_present (
    GTK_WINDOW (lb_send_window_new (GTK_WINDOW (self), lb_window_get_job (self))));
}

static void
packet_chosen_cb (GFile *file, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_job (self) != NULL)
    lb_window_join (self, file);
}

static void
join_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  const LbChooseFile what = {
    .parent = GTK_WINDOW (data),
    .title = _ ("Join a Packet"),
    .accept = _ ("_Look At It"),
    .files = _ ("Packets and copies of the job"),
    .endings = "lastpack lastbent",
  };

  lb_choose_file (&what, packet_chosen_cb, G_OBJECT (data));
}

static void
lay_grid_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  gtk_window_present (
    GTK_WINDOW (lb_grid_window_new (GTK_WINDOW (self), lb_window_get_job (self))));
}

static void
defaults_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  gtk_window_present (
    GTK_WINDOW (lb_defaults_window_new (GTK_WINDOW (self), lb_window_get_job (self))));
}

static void
pier_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  gtk_window_present (
    GTK_WINDOW (lb_pier_window_new (GTK_WINDOW (self), lb_window_get_job (self))));
}

static void
burning_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  gtk_window_present (
    GTK_WINDOW (lb_burn_window_new (GTK_WINDOW (self), lb_window_get_job (self))));
}

static void
find_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  lb_window_show_page (self, "plan");
  gtk_widget_activate_action (lb_window_get_page (self, "plan"), "plan.find", NULL);
}

/* Whose cards to print; says so when no pile is picked. */
static const guint *
picked_piles (LbWindow *self, gsize *out_n)
{
  const guint *piles = lb_selection_get_piles (lb_window_get_selection (self), out_n);

  if (*out_n == 0)
    lb_say (GTK_WIDGET (self), _ ("Pick the piles on the plan first: each gets a card"), FALSE);
  return piles;
}

/* The day of the shift in hand, else the last one worked; says so when there is none. */
static gboolean
find_day (LbWindow *self, guint32 *out_day)
{
  LbJob *job = lb_window_get_job (self);
  const LbFold *fold = lb_job_get_fold (job);
  const int shift = lb_job_get_shift (job);

  if (shift >= 0) {
    *out_day = lb_ledger_shift (lb_job_get_ledger (job), (guint) shift)->day;
    return TRUE;
  }
  if (fold->n_days > 0) {
    *out_day = fold->days[fold->n_days - 1].day;
    return TRUE;
  }
  lb_say (GTK_WIDGET (self), _ ("No shift is on record yet, so there is no day to report"), FALSE);
  return FALSE;
}

static void
print_card_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  gsize n;
  const guint *piles = picked_piles (self, &n);

  if (n > 0)
    lb_print_cards (GTK_WINDOW (self), lb_window_get_job (self), piles, n);
}

static void
save_card_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  gsize n;
  const guint *piles = picked_piles (self, &n);

  if (n > 0)
    lb_save_cards (GTK_WINDOW (self), lb_window_get_job (self), piles, n);
}

static void
print_day_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  guint32 day;

  if (find_day (self, &day))
    lb_print_day (GTK_WINDOW (self), lb_window_get_job (self), day);
}

static void
save_day_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  guint32 day;

  if (find_day (self, &day))
    lb_save_day (GTK_WINDOW (self), lb_window_get_job (self), day);
}

/* The checks before a dive, by its entry's id, on the sheet of its pile. */
static void
show_checks_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);
  const LbLedger *ledger = lb_job_get_ledger (lb_window_get_job (self));
  const char *id = g_variant_get_string (parameter, NULL);

  for (guint i = ledger->entries->len; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->pile < 0 || !g_str_equal (entry->id, id))
      continue;
    lb_selection_set_current (lb_window_get_selection (self), entry->pile);
    lb_window_show_page (self, "plan");
    gtk_widget_activate_action_variant (lb_window_get_page (self, "plan"), "plan.show-checks",
                                        parameter);
    return;
  }
}

static void
open_again_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_file (self) != NULL)
    lb_window_open (self, lb_window_get_file (self));
}

static void
copies_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_file (self) != NULL)
    gtk_window_present (lb_copies_window_new (GTK_WINDOW (self), lb_window_get_file (self)));
}

static void
recover_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  LbWindow *self = LB_WINDOW (data);

  if (lb_window_get_file (self) != NULL)
    lb_recover_file (GTK_WINDOW (self), lb_window_get_file (self));
}

/* The list of keys is made when it is first asked for: under the name by which the toolkit looks
 * for it, each window would make it at its start, for a tenth of the time of an empty one. */
static void
show_keys_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkApplicationWindow *window = GTK_APPLICATION_WINDOW (data);

  if (gtk_application_window_get_help_overlay (window) == NULL) {
    g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource (
      "/org/lastbent/Lastbent/keys-window.ui");

    gtk_application_window_set_help_overlay (
      window, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "keys_window")));
  }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (window)));
}

static const GActionEntry entries[] = {
  { .name = "burning", .activate = burning_cb },
  { .name = "pier", .activate = pier_cb },
  { .name = "copies", .activate = copies_cb },
  { .name = "defaults", .activate = defaults_cb },
  { .name = "find", .activate = find_cb },
  { .name = "join", .activate = join_cb },
  { .name = "lay-grid", .activate = lay_grid_cb },
  { .name = "open-again", .activate = open_again_cb },
  { .name = "print-card", .activate = print_card_cb },
  { .name = "print-day", .activate = print_day_cb },
  { .name = "recover", .activate = recover_cb },
  { .name = "redo", .activate = redo_cb },
  { .name = "save-card", .activate = save_card_cb },
  { .name = "save-copy", .activate = save_copy_cb },
  { .name = "save-day", .activate = save_day_cb },
  { .name = "send", .activate = send_cb },
  { .name = "show-checks", .parameter_type = "s", .activate = show_checks_cb },
  { .name = "show-keys", .activate = show_keys_cb },
  { .name = "take-back", .activate = take_back_cb },
  { .name = "take-list", .activate = take_list_cb },
  { .name = "units", .parameter_type = "s", .state = "'us'", .change_state = units_cb },
};

static void
enable (LbWindow *self, const char *name, gboolean is_enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), is_enabled);
}

void
lb_window_actions_add (LbWindow *self)
{
  gsize n;
  const LbPageKind *kinds = lb_page_kinds (&n);

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  for (gsize i = 0; i < n; i++) {
    g_autofree char *name = g_strconcat ("page-", kinds[i].name, NULL);
    const GActionEntry entry = { .name = name, .activate = page_cb };

    g_action_map_add_action_entries (G_ACTION_MAP (self), &entry, 1, self);
  }
}

void
lb_window_actions_update (LbWindow *self)
{
  LbJob *job = lb_window_get_job (self);
  const gboolean can_record = job != NULL && !lb_job_is_read_only (job);
  GAction *units = g_action_map_lookup_action (G_ACTION_MAP (self), "units");

  enable (self, "burning", job != NULL);
  enable (self, "pier", job != NULL);
  enable (self, "defaults", job != NULL);
  enable (self, "find", job != NULL);
  enable (self, "join", can_record);
  enable (self, "lay-grid", can_record);
  enable (self, "print-card", job != NULL);
  enable (self, "print-day", job != NULL);
  enable (self, "redo", job != NULL && lb_job_can_redo (job));
  enable (self, "save-card", job != NULL);
  enable (self, "save-copy", job != NULL);
  enable (self, "save-day", job != NULL);
  enable (self, "send", job != NULL && lb_job_get_ledger (job)->shifts->len > 0);
  enable (self, "show-checks", job != NULL);
  enable (self, "take-back", job != NULL && lb_job_can_take_back (job));
  enable (self, "take-list", can_record);
  enable (self, "units", can_record);
  if (job != NULL)
    g_simple_action_set_state (
      G_SIMPLE_ACTION (units),
      g_variant_new_string (lb_job_get_fold (job)->units == LB_UNITS_METRIC ? "metric" : "us"));
}
