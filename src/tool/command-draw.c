/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/daily-chart.h"
#include "draw/picture.h"
#include "draw/plan.h"
#include "draw/section.h"
#include "draw/side.h"
#include "tool/command.h"

#include <glib/gi18n-lib.h>

static gboolean is_dark;
static int width_option, height_option;
static char *day_option;

static const GOptionEntry options[] = {
  { "dark", 0, 0, G_OPTION_ARG_NONE, &is_dark, N_ ("In the dark colours"), NULL },
  { "width", 0, 0, G_OPTION_ARG_INT, &width_option, N_ ("Width in points, 100 to 10000"),
    N_ ("POINTS") },
  { "height", 0, 0, G_OPTION_ARG_INT, &height_option, N_ ("Height in points, 100 to 10000"),
    N_ ("POINTS") },
  { "day", 0, 0, G_OPTION_ARG_STRING, &day_option,
    N_ ("The plan as it stood at the end of that day, as 2026-07-14"), N_ ("DATE") },
  { NULL },
};

typedef struct
{
  const LbToolJob *job;
  const LbPalette *palette;
  LbVoice voice;
  guint pile;
  LbCutPlan plan;
  LbFold *past; /* of an earlier day, NULL for now */
} Picture;

static void
draw_plan (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Picture *picture = data;

  lb_plan_draw_sheet (cr, picture->palette, &picture->voice,
                      picture->past != NULL ? picture->past : picture->job->fold, width, height);
}

static void
draw_side (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Picture *picture = data;
  const LbFold *fold = picture->job->fold;
  const LbPile *pile = &fold->piles[picture->pile];
  const LbSide side = { .pile = pile,
                        .plan = &picture->plan,
                        .water_m = fold->assumptions.value[LB_ASSUME_WATER_LEVEL],
                        .cut_m = lb_pile_cut_elevation (pile, &fold->assumptions),
                        .step = fold->states[picture->pile].step };

  lb_side_draw (cr, picture->palette, &picture->voice, &side, width, height);
}

static void
draw_section (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Picture *picture = data;
  const LbFold *fold = picture->job->fold;
  const LbSection section = { .pile = &fold->piles[picture->pile],
                              .plan = &picture->plan,
                              .burned = fold->states[picture->pile].burned,
                              .focus = -1 };

  lb_section_draw (cr, picture->palette, &picture->voice, &section, width, height);
}

static void
draw_daily (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Picture *picture = data;
  const LbFold *fold = picture->job->fold;
  const LbDailyChart chart = { .days = fold->days,
                               .n_days = fold->n_days,
                               .focus = -1,
                               .n_piles = fold->n_piles };

  lb_daily_chart_draw (cr, picture->palette, &picture->voice, &chart, width, height);
}

typedef struct
{
  const char *name;
  LbPictureFunc draw;
  gboolean needs_pile;
  double width, height; /* when not said */
} Kind;

static const Kind kinds[] = {
  { "plan", draw_plan, FALSE, 1200, 800 },
  { "side", draw_side, TRUE, 480, 640 },
  { "section", draw_section, TRUE, 480, 480 },
  { "daily", draw_daily, FALSE, 1000, 520 },
};

typedef struct
{
  const Kind *kind;
  Picture *picture;
} Job;

static void
draw_cb (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  const Job *job = data;

  lb_ink_set (cr, job->picture->palette, LB_INK_PAPER);
  cairo_paint (cr);
  job->kind->draw (cr, page, width, height, job->picture);
}

static const Kind *
find_kind (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    if (g_str_equal (kinds[i].name, name))
      return &kinds[i];
  }

  return NULL;
}

static gboolean
is_size (int points)
{
  return points == 0 || (points >= 100 && points <= 10000);
}

static gboolean
find_pile (Picture *picture, const char *mark, GError **error)
{
  const LbFold *fold = picture->job->fold;
  const int pile = lb_tool_find_pile (picture->job, mark, error);

  if (pile < 0)
    return FALSE;

  picture->pile = (guint) pile;
  lb_cut_plan_reckon (&fold->piles[pile], fold->states[pile].burned, fold->states[pile].gone,
                      fold->states[pile].n_unplaced, lb_fold_basis (fold), &picture->plan);
  return TRUE;
}

static LbExit
run (int n_args, char **args)
{
  g_auto (LbToolJob) job = { 0 };
  g_autoptr (GError) error = NULL;
  const Kind *kind = find_kind (args[1]);

  if (kind == NULL)
    return lb_tool_misuse (_ ("“%s” is not plan, side, section or daily"), args[1]);
  if (n_args != (kind->needs_pile ? 4 : 3))
    return lb_tool_misuse (kind->needs_pile ? _ ("“%s” wants a pile and then the picture’s name")
                                            : _ ("“%s” wants only the picture’s name"),
                           kind->name);
  if (!is_size (width_option) || !is_size (height_option))
    return lb_tool_misuse (_ ("a picture is 100 to 10000 points wide and high"));
  if (day_option != NULL && kind->draw != draw_plan)
    return lb_tool_misuse (_ ("only the plan is drawn as it stood on a day"));

  guint32 day = 0;
  if (day_option != NULL && !lb_tool_read_day (day_option, &day, &error))
    return lb_tool_misuse ("%s", error->message);
  if (!lb_tool_job_open (&job, args[0], LB_BOOK_READ, &error))
    return lb_tool_refuse (error);

  g_autoptr (LbFold) past = day_option != NULL ? lb_fold_new_of_day (job.ledger, day) : NULL;
  Picture picture = { .job = &job,
                      .palette = lb_palette (is_dark ? LB_PALETTE_DARK : LB_PALETTE_LIGHT),
                      .voice = lb_tool_voice (&job),
                      .past = past };
  Job drawing = { .kind = kind, .picture = &picture };
  const double width = width_option > 0 ? width_option : kind->width;
  const double height = height_option > 0 ? height_option : kind->height;

  if ((kind->needs_pile && !find_pile (&picture, args[2], &error)) ||
      !lb_picture_write (args[n_args - 1], width, height, 1, job.fold->name, draw_cb, &drawing,
                         &error))
    return lb_tool_refuse (error);

  return LB_EXIT_DONE;
}

const LbCommand lb_command_draw = {
  .name = "draw",
  .arguments = N_ ("FILE plan|side PILE|section PILE|daily OUT.png|svg|pdf"),
  .summary = N_ ("Draw the plan, a pile’s side or section, or the daily chart"),
  .options = options,
  .least = 3,
  .most = 4,
  .run = run,
};
