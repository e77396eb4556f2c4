/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table is sound only as a whole, so it is typed here and handed to the job at once. The window
 * shows the lines as the list has them, the heading being line 1, and reads them as it would read a
 * list: what is wrong is said in the same words, and the number of the line stands before it.
 *
 * Lines are boxes in a list; a line that is left empty counts for nothing. */
#include "desk/sheet/table-window.h"

#include "book/delay-causes.h"
#include "book/ground-text.h"
#include "desk/shell/say.h"
#include "draw/record-words.h"
#include "exchange/setting-list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define N_LINES_FIRST 4 /* of a table nobody has typed yet */
#define SOIL_COLUMN   1

struct _LbTableWindow
{
  AdwWindow parent_instance;

  GtkWidget *lines_box;
  GtkWidget *use_button;
  GtkWidget *scroll;
  GtkLabel *verdict;
  GtkSizeGroup *column_sizes[4]; /* as many as the widest table has */
  GtkSizeGroup *button_sizes;    /* of what stands after them */
  LbJob *job;
  LbSettingTable table;
  char **heading;
  char *text; /* of the table as typed, NULL while something is wrong */
};

G_DEFINE_FINAL_TYPE (LbTableWindow, lb_table_window, ADW_TYPE_WINDOW)

/* What people read over the columns; msgids. */
static const struct
{
  const char *title, *about;
  const char *columns[4];
} kinds[LB_N_SETTING_TABLES] = {
  [LB_TABLE_CRANE] = { N_ ("The Crane’s Chart"),
                       N_ (
                         "As the chart has it, from the shortest radius to the longest. The chart "
                         "of a land crane on a barge must have been reduced for it by the maker or "
                         "a qualified person (29 CFR 1926.1437(n))."),
                       { N_ ("Radius"), N_ ("Capacity") } },
  [LB_TABLE_GROUND] = { N_ ("Layers of the Ground"),
                        N_ ("From the mudline down, each layer from where the one above ends. In "
                            "water is what the wet ground weighs less the water. A sand needs no "
                            "strength; for friction it is the engineer’s figure."),
                        { N_ ("Down to"), N_ ("Soil"), N_ ("Strength"), N_ ("In water") } },
  [LB_TABLE_DELAYS] = { N_ ("Causes of Delay"),
                        N_ (
                          "What the shift’s record offers, a line each. What is on record stays as "
                          "it was said."),
                        { N_ ("Cause") } },
};

static gboolean
is_soil (const LbTableWindow *self, guint column)
{
  return self->table == LB_TABLE_GROUND && column == SOIL_COLUMN;
}

/* --- What was typed ----------------------------------------------------------------------- */

static const char *
cell_text (GtkWidget *cell)
{
  const guint chosen = GTK_IS_DROP_DOWN (cell) ? gtk_drop_down_get_selected (GTK_DROP_DOWN (cell))
                                               : 0;

  if (!GTK_IS_DROP_DOWN (cell))
    return gtk_editable_get_text (GTK_EDITABLE (cell));
  /* The first of the list is no soil yet. */
  return chosen > 0 && chosen <= LB_N_SOIL_WORDS ? lb_soil_word (chosen - 1) : "";
}

static GtkWidget *
next_cell (GtkWidget *cell)
{
  GtkWidget *next = gtk_widget_get_next_sibling (cell);

  return GTK_IS_BUTTON (next) ? NULL : next;
}

/* After the number of the line. */
static GtkWidget *
first_cell (GtkWidget *line)
{
  return gtk_widget_get_next_sibling (gtk_widget_get_first_child (line));
}

static gboolean
is_empty (GtkWidget *line)
{
  for (GtkWidget *cell = first_cell (line); cell != NULL; cell = next_cell (cell))
    if (*cell_text (cell) != '\0')
      return FALSE;
  return TRUE;
}

/* The list that was typed; tabs, so that a decimal comma is one. */
static char *
make_list (LbTableWindow *self)
{
  g_autofree char *heading = g_strjoinv ("\t", self->heading);
  GString *list = g_string_new (heading);

  for (GtkWidget *line = gtk_widget_get_first_child (self->lines_box); line != NULL;
       line = gtk_widget_get_next_sibling (line))
  {
    g_string_append_c (list, '\n');
    if (is_empty (line))
      continue;
    for (GtkWidget *cell = first_cell (line); cell != NULL; cell = next_cell (cell)) {
      g_autofree char *text = g_strdelimit (g_strdup (cell_text (cell)), "\t\n\r\"", ' ');

      g_string_append_printf (list, "%s%s", cell == first_cell (line) ? "" : "\t", text);
    }
  }
  return g_string_free (list, FALSE);
}

static void
update (LbTableWindow *self)
{
  g_autofree char *list = make_list (self);
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->text, g_free);
  self->text = lb_setting_list_from_csv (self->table, list, strlen (list), &error);
  gtk_label_set_label (self->verdict, error != NULL ? error->message : "");
  gtk_widget_set_sensitive (self->use_button, self->text != NULL);
}

/* --- Lines -------------------------------------------------------------------------------- */

static void
number_lines (LbTableWindow *self)
{
  guint number = 2; /* the heading is the first */

  for (GtkWidget *line = gtk_widget_get_first_child (self->lines_box); line != NULL;
       line = gtk_widget_get_next_sibling (line))
  {
    g_autofree char *text = g_strdup_printf ("%u", number++);

    gtk_label_set_label (GTK_LABEL (gtk_widget_get_first_child (line)), text);
  }
}

static void
remove_clicked_cb (GtkWidget *button, LbTableWindow *self)
{
  GtkWidget *line = gtk_widget_get_parent (button);

  gtk_box_remove (GTK_BOX (self->lines_box), line);
  number_lines (self);
  update (self);
}

static GtkWidget *
make_number (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_width_chars (GTK_LABEL (label), 3);
  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_widget_add_css_class (label, "numeric");
  return label;
}

static GtkWidget *
make_soils (LbTableWindow *self, const char *soil)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  GtkWidget *drop_down;
  guint chosen = 0;

  gtk_string_list_append (words, C_ ("soil", "choose"));
  for (guint i = 0; i < LB_N_SOIL_WORDS; i++) {
    gtk_string_list_append (words, g_dgettext (GETTEXT_PACKAGE, lb_soil_word (i)));
    if (g_ascii_strcasecmp (lb_soil_word (i), soil) == 0)
      chosen = i + 1;
  }
  drop_down = gtk_drop_down_new (G_LIST_MODEL (words), NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), chosen);
  g_signal_connect_object (drop_down, "notify::selected", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  return drop_down;
}

static GtkWidget *
make_cell (LbTableWindow *self, guint column, const char *text)
{
  GtkWidget *entry;

  if (is_soil (self, column))
    return make_soils (self, text);
  entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  g_signal_connect_object (entry, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  return entry;
}

static char *
column_title (LbTableWindow *self, guint column)
{
  const char *title = _ (kinds[self->table].columns[column]);
  g_autofree char *heading = g_strdelimit (g_strdup (self->heading[column]), "_()[]", ' ');
  const char *unit = strrchr (g_strchomp (heading), ' ');

  return is_soil (self, column) || unit == NULL ? g_strdup (title)
                                                /* Translators: what is typed, and its unit. */
                                                : g_strdup_printf (_ ("%s (%s)"), title, unit + 1);
}

static GtkWidget *
add_line (LbTableWindow *self, char **cells)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  const guint n_cells = cells != NULL ? g_strv_length (cells) : 0;

  gtk_box_append (GTK_BOX (line), make_number (NULL));
  for (guint column = 0; self->heading[column] != NULL; column++) {
    GtkWidget *cell = make_cell (self, column, column < n_cells ? g_strstrip (cells[column]) : "");
    g_autofree char *title = column_title (self, column);

    gtk_widget_set_hexpand (cell, TRUE);
    gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                    -1);
    gtk_size_group_add_widget (self->column_sizes[column], cell);
    gtk_box_append (GTK_BOX (line), cell);
  }
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Remove this line"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Remove this line"), -1);
  g_signal_connect (button, "clicked", G_CALLBACK (remove_clicked_cb), self);
  gtk_size_group_add_widget (self->button_sizes, button);
  gtk_box_append (GTK_BOX (line), button);
  gtk_box_append (GTK_BOX (self->lines_box), line);
  return line;
}

static void
add_clicked_cb (LbTableWindow *self)
{
  GtkWidget *line = add_line (self, NULL);

  number_lines (self);
  update (self);
  gtk_widget_grab_focus (first_cell (line));
}

/* --- The window --------------------------------------------------------------------------- */

static void
use_clicked_cb (LbTableWindow *self)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  GError *error = NULL;

  draft.what = lb_setting_table_key (self->table);
  draft.note = self->text;
  if (lb_job_record (self->job, &draft, 1, &error))
    gtk_window_destroy (GTK_WINDOW (self));
  else
    lb_say_error (GTK_WIDGET (self), _ ("That was not stored"), error);
}

static GtkWidget *
make_header (LbTableWindow *self)
{
  GtkWidget *bar = adw_header_bar_new ();
  GtkWidget *cancel = gtk_button_new_with_mnemonic (_ ("_Cancel"));

  self->use_button = gtk_button_new_with_mnemonic (_ ("_Use"));
  gtk_widget_add_css_class (self->use_button, "suggested-action");
  g_signal_connect_swapped (self->use_button, "clicked", G_CALLBACK (use_clicked_cb), self);
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_close), self);
  adw_header_bar_set_show_end_title_buttons (ADW_HEADER_BAR (bar), FALSE);
  adw_header_bar_pack_start (ADW_HEADER_BAR (bar), cancel);
  adw_header_bar_pack_end (ADW_HEADER_BAR (bar), self->use_button);
  return bar;
}

static GtkLabel *
make_words (const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_xalign (label, 0);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  return label;
}

static GtkWidget *
make_titles (LbTableWindow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *end = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_box_append (GTK_BOX (line), make_number ("1"));
  for (guint column = 0; self->heading[column] != NULL; column++) {
    g_autofree char *title = column_title (self, column);
    GtkWidget *label = gtk_label_new (title);

    gtk_widget_add_css_class (label, "heading");
    gtk_widget_set_hexpand (label, TRUE);
    gtk_size_group_add_widget (self->column_sizes[column], label);
    gtk_box_append (GTK_BOX (line), label);
  }
  gtk_size_group_add_widget (self->button_sizes, end);
  gtk_box_append (GTK_BOX (line), end);
  return line;
}

static void
set_margins (GtkWidget *widget)
{
  gtk_widget_set_margin_top (widget, 12);
  gtk_widget_set_margin_bottom (widget, 18);
  gtk_widget_set_margin_start (widget, 12);
  gtk_widget_set_margin_end (widget, 12);
}

/* Once the heading is known. */
static void
fill (LbTableWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("_Add a Line"));
  GtkLabel *about = make_words ("dim-label");

  gtk_label_set_label (about, _ (kinds[self->table].about));
  self->verdict = make_words ("error");
  self->lines_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_clicked_cb), self);
  set_margins (box);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (about));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->verdict));
  gtk_box_append (GTK_BOX (box), make_titles (self));
  gtk_box_append (GTK_BOX (box), self->lines_box);
  gtk_box_append (GTK_BOX (box), add);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroll), box);
}

/* The causes that are built in, to begin a list with. */
static char *
first_causes (const LbFold *fold, const char *heading)
{
  g_auto (GStrv) causes = lb_delay_causes (fold);
  GString *text = g_string_new (heading);

  for (guint i = 0; causes[i] != NULL; i++)
    g_string_append_printf (text, "\n%s", lb_shift_word_name (LB_WORDS_DELAY, causes[i]));
  return g_string_free (text, FALSE);
}

static char *
first_text (LbTableWindow *self)
{
  const LbFold *fold = lb_job_get_fold (self->job);
  const char *kept = fold->tables[self->table];
  const char *heading = lb_setting_table_heading (self->table, lb_job_get_voice (self->job)->units);

  if (*kept != '\0')
    return g_strdup (kept);
  return self->table == LB_TABLE_DELAYS ? first_causes (fold, heading) : g_strdup (heading);
}

static void
read_job (LbTableWindow *self)
{
  g_autofree char *text = first_text (self);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  self->heading = g_strsplit (lines[0], ",", G_N_ELEMENTS (self->column_sizes));
  fill (self);
  for (guint i = 1; lines[i] != NULL; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], ",", -1);

    if (*g_strstrip (lines[i]) != '\0')
      add_line (self, cells);
  }
  for (guint i = 0; lines[1] == NULL && i < N_LINES_FIRST; i++)
    add_line (self, NULL);
  number_lines (self);
  update (self);
  gtk_window_set_focus (GTK_WINDOW (self),
                        first_cell (gtk_widget_get_first_child (self->lines_box)));
}

static void
lb_table_window_dispose (GObject *object)
{
  g_clear_object (&LB_TABLE_WINDOW (object)->job);
  G_OBJECT_CLASS (lb_table_window_parent_class)->dispose (object);
}

static void
lb_table_window_finalize (GObject *object)
{
  LbTableWindow *self = LB_TABLE_WINDOW (object);

  for (guint i = 0; i < G_N_ELEMENTS (self->column_sizes); i++)
    g_object_unref (self->column_sizes[i]);
  g_object_unref (self->button_sizes);
  g_strfreev (self->heading);
  g_free (self->text);
  G_OBJECT_CLASS (lb_table_window_parent_class)->finalize (object);
}

static void
lb_table_window_class_init (LbTableWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_table_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_table_window_finalize;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
lb_table_window_init (LbTableWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (guint i = 0; i < G_N_ELEMENTS (self->column_sizes); i++)
    self->column_sizes[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->button_sizes = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->scroll = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroll), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (self->scroll, TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self), 520, 520);
  gtk_box_append (GTK_BOX (box), make_header (self));
  gtk_box_append (GTK_BOX (box), self->scroll);
  adw_window_set_content (ADW_WINDOW (self), box);
}

LbTableWindow *
lb_table_window_new (GtkWindow *parent, LbJob *job, LbSettingTable table)
{
  LbTableWindow *self = g_object_new (LB_TYPE_TABLE_WINDOW, "transient-for", parent, "modal", TRUE,
                                      "title", _ (kinds[table].title), NULL);

  self->job = g_object_ref (job);
  self->table = table;
  read_job (self);
  return self;
}
