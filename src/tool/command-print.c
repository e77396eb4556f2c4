/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/day-accounts.h"
#include "draw/page.h"
#include "draw/picture.h"
#include "draw/plan-words.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static char *paper_option, *cautions_option;

static const GOptionEntry options[] = {
  { "paper", 0, 0, G_OPTION_ARG_STRING, &paper_option,
    N_ ("Paper; letter for a job in US customary units, else A4"), "letter|a4" },
  { "cautions", 0, 0, G_OPTION_ARG_FILENAME, &cautions_option,
    N_ ("Cautions of the crew’s own on cards: a list as cautions.csv"), N_ ("LIST") },
  { NULL },
};

typedef struct
{
  const LbToolJob *job;
  LbVoice voice;
  LbCutBasis basis;            /* of cards */
  GArray *piles;               /* guint: of cards */
  const LbDayAccount *account; /* of a report */
} Paper;

static void
draw_card_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Paper *paper = data;

  lb_card_draw (cr, &paper->voice, paper->job->fold, &paper->basis,
                g_array_index (paper->piles, guint, page), width, height);
}

static void
draw_report_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Paper *paper = data;

  lb_day_report_draw (cr, &paper->voice, paper->account, page, width, height);
}

/* Pictures have one page: only the first of a longer print goes into a PNG or SVG. */
static gsize
pages_for (const char *path, gsize n_pages)
{
  return g_str_has_suffix (path, ".pdf") ? n_pages : MIN (n_pages, 1);
}

static LbExit
print_cards (Paper *paper, int n_marks, char **marks, const char *path, double width, double height)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) piles = g_array_new (FALSE, FALSE, sizeof (guint));

  for (int i = 0; i < n_marks; i++) {
    const int found = lb_tool_find_pile (paper->job, marks[i], &error);
    const guint pile = (guint) found;

    if (found < 0)
      return lb_tool_refuse (error);
    g_array_append_val (piles, pile);
  }
  paper->piles = piles;

  if (!lb_picture_write (path, width, height, pages_for (path, piles->len), _ ("Cut card"),
                         draw_card_cb, paper, &error))
    return lb_tool_refuse (error);
  return LB_EXIT_DONE;
}

static gboolean
has_shift (const LbFold *fold, guint32 day)
{
  for (gsize i = 0; i < fold->n_days; i++) {
    if (fold->days[i].day == day)
      return TRUE;
  }

  return FALSE;
}

static LbExit
print_day (Paper *paper, const char *day, const char *path, double width, double height)
{
  g_autoptr (GError) error = NULL;
  guint32 number;

  if (!lb_tool_read_day (day, &number, &error))
    return lb_tool_misuse ("%s", error->message);
  if (!has_shift (paper->job->fold, number)) {
    g_set_error (&error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                 _ ("The job has no shift on %s: “lastbent-tool totals” lists its days"), day);
    return lb_tool_refuse (error);
  }

  g_autoptr (LbDayAccount) account = lb_day_account_new (paper->job->ledger, paper->job->fold,
                                                         number);
  const gsize n_pages = lb_day_report_n_pages (&paper->voice, account, width, height);

  paper->account = account;

  if (!lb_picture_write (path, width, height, pages_for (path, n_pages), _ ("Daily report"),
                         draw_report_cb, paper, &error))
    return lb_tool_refuse (error);
  return LB_EXIT_DONE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  const gboolean is_card = g_str_equal (args[1], "card");
  const char *path = args[n_args - 1];
  LbPaper size;
  double width, height;

  if (!is_card && !g_str_equal (args[1], "day"))
    return lb_tool_misuse (_ ("“%s” is not card or day"), args[1]);
  if (!is_card && n_args != 4)
    return lb_tool_misuse (_ ("“day” wants a date and then the file’s name"));
  if (paper_option != NULL && !lb_paper_from_name (paper_option, &size))
    return lb_tool_misuse (_ ("“%s” is not letter or a4"), paper_option);
  if (!is_card && cautions_option != NULL)
    return lb_tool_misuse (_ ("“--cautions” is for cards: a daily report has none"));
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error) ||
      !lb_tool_job_add_cautions (&job, cautions_option, &error))
    return lb_tool_refuse (error);

  if (paper_option == NULL)
    size = job.fold->units == LB_UNITS_US ? LB_PAPER_LETTER : LB_PAPER_A4;
  lb_paper_size (size, &width, &height);

  Paper paper = { .job = &job, .voice = lb_tool_voice (&job), .basis = lb_tool_job_basis (&job) };

  return is_card ? print_cards (&paper, n_args - 3, args + 2, path, width, height)
                 : print_day (&paper, args[2], path, width, height);
}

const LbCommand lb_command_print = {
  .name = "print",
  .arguments = N_ ("FILE card PILE…|day DATE OUT.pdf"),
  .summary = N_ ("Print cut cards, or the daily report, into a PDF"),
  .more = N_ ("OUT may end in .png or .svg too, for the first page alone."),
  .options = options,
  .least = 4,
  .most = -1,
  .run = run,
};
