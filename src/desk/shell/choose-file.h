/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is asked when somebody is to choose a file. */
typedef struct
{
  GtkWindow *parent;
  const char *title;
  const char *accept;  /* the button's label */
  const char *name;    /* proposed for a file that is to be saved; NULL to open one */
  const char *files;   /* what the files looked for are called, NULL for any */
  const char *endings; /* theirs, with spaces between */
} LbChooseFile;

typedef void (*LbFileChosen) (GFile *file, gpointer data);

/* Asks, and calls @chosen with the file; not when nobody wants one any more, or @data is gone. */
void lb_choose_file (const LbChooseFile *what, LbFileChosen chosen, GObject *data);

/* The same for a list that comes as text. */
void lb_choose_list (GtkWindow *parent,
                     const char *title,
                     const char *accept,
                     LbFileChosen chosen,
                     GObject *data);

G_END_DECLS
