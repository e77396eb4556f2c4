/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/error-words.h"

#include "book/book-error.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const char *heading;
  const char *advice; /* NULL: the error's own words say all */
} Words;

/* By LbBookError. */
static const Words book_words[] = {
  [LB_BOOK_ERROR_OPEN] = { N_ ("The file cannot be opened"),
                           N_ ("Check that it is still there and that you may read it.") },
  [LB_BOOK_ERROR_FOREIGN] = { N_ ("This is not a job file"),
                              N_ ("It was not made by this program, and was not changed. A pile "
                                  "list is taken into a job from its menu.") },
  [LB_BOOK_ERROR_NEWER] = { N_ ("The file is from a newer version"),
                            N_ ("It was not changed. Open it with the version that wrote it, or "
                                "bring this program up to date.") },
  [LB_BOOK_ERROR_DAMAGED] = { N_ ("The file is damaged"),
                              N_ (
                                "It was not changed. Look at the newest copy of it; and keep this "
                                "one: “Recover…” puts what can be read into a new file.") },
  [LB_BOOK_ERROR_READ_ONLY] = { N_ ("Nothing can be recorded"),
                                N_ ("The job was opened for reading. Save a copy where you may "
                                    "write, and go on in the copy.") },
  [LB_BOOK_ERROR_BUSY] = { N_ ("Another program is writing to the file"),
                           N_ ("Nothing was stored. Wait a moment and try again.") },
  [LB_BOOK_ERROR_DISK] = { N_ ("The disk did not take it"),
                           N_ ("Nothing was stored. Make room or check the disk, and try again.") },
  [LB_BOOK_ERROR_REFUSED] = { N_ ("That was refused"), NULL },
  [LB_BOOK_ERROR_SIGNED] = { N_ ("The shift is signed"),
                             N_ (
                               "Press “Correct…” on the Shift page to change it with a reason.") },
  [LB_BOOK_ERROR_CANCELLED] = { N_ ("Cancelled"), N_ ("Nothing was changed.") },
};

static const Words *
find_words (const GError *error)
{
  static const Words other = { N_ ("That did not work"), NULL };

  if (error->domain == LB_BOOK_ERROR && error->code >= 0 &&
      error->code < (int) G_N_ELEMENTS (book_words))
    return &book_words[error->code];
  return &other;
}

char *
lb_error_words (const GError *error)
{
  const Words *words = find_words (error);

  g_return_val_if_fail (error != NULL, NULL);

  if (words->advice == NULL)
    return g_strdup (error->message);
  return g_strdup_printf ("%s\n\n%s", _ (words->advice), error->message);
}

const char *
lb_error_heading (const GError *error)
{
  g_return_val_if_fail (error != NULL, NULL);

  return _ (find_words (error)->heading);
}
