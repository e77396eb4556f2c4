/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas against a window that only fills itself.
 *
 * One window without borders shows, in turn, each of a few scenes for a few frames, so that
 * whatever else the machine does meets all of them alike:
 *   fill    one colour over the whole window, another in each frame: the floor
 *   image   one ready picture over the whole window, another in each frame: what any program pays
 *           that brings its own pixels
 *   all     10,000 piles in view, panned a few pixels each frame
 *   named   500 piles in view with their names, panned
 *   still   a frame asked for while nothing changes
 *   hover   the same plan while the highlight goes from pile to pile
 * A frame is timed from the frame clock's "before-paint" to its "after-paint" and until the
 * display has done what it was sent. The first frames of a scene's turn are not counted: they
 * show the child and make the sprites. */
#include "../desk/small-job.h"
#include "big-job.h"
#include "desk/plan/plan-canvas-private.h"
#include "desk/plan/plan-image.h"
#include "desk/shell/frame-memory.h"
#include "desk/shell/look.h"
#include "frame-watch.h"
#include "stopwatch.h"

#include <adwaita.h>
#include <glib/gstdio.h>

#define WIDTH      1600
#define HEIGHT     1000
#define PER_NAMED  20 /* one in so many piles is in view when names are */
#define TURN       10 /* frames of one scene's turn */
#define NOT_TIMED  3
#define PAN_SWING  12 /* frames one way before panning back */
#define PAN_STEP_X 3
#define PAN_STEP_Y 2

typedef struct _Bench Bench;

typedef struct
{
  const char *name;
  const char *child; /* of the stack */
  void (*step) (Bench *bench, guint frame);
  Stopwatch watch;
} Scene;

struct _Bench
{
  GtkWidget *window;
  GtkWidget *stack;
  GtkWidget *fill;
  GtkWidget *image;
  GtkWidget *all;
  GtkWidget *named;
  FrameWatch *frames;
};

/* A widget that changes wholly in each frame: by one colour, or by one of two ready images. */
#define TYPE_FLOOR (floor_get_type ())
G_DECLARE_FINAL_TYPE (Floor, floor, SPEED, FLOOR, GtkWidget)

struct _Floor
{
  GtkWidget parent_instance;

  cairo_surface_t *images[2]; /* NULL for a floor of one colour */
  guint frame;
};

G_DEFINE_FINAL_TYPE (Floor, floor, GTK_TYPE_WIDGET)

static GdkRGBA
colour_of (guint frame)
{
  return frame % 2 == 0 ? (GdkRGBA){ 0.9F, 0.9F, 0.9F, 1 } : (GdkRGBA){ 0.8F, 0.8F, 0.8F, 1 };
}

static void
floor_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  const Floor *self = SPEED_FLOOR (widget);
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                     (float) gtk_widget_get_height (widget));
  cairo_surface_t *image = self->images[self->frame % 2];

  if (image == NULL) {
    const GdkRGBA colour = colour_of (self->frame);

    gtk_snapshot_append_color (snapshot, &colour, &bounds);
  } else {
    cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

    cairo_set_source_surface (cr, image, 0, 0);
    cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
    cairo_paint (cr);
    cairo_destroy (cr);
  }
}

static void
floor_finalize (GObject *object)
{
  Floor *self = SPEED_FLOOR (object);

  for (gsize i = 0; i < G_N_ELEMENTS (self->images); i++)
    g_clear_pointer (&self->images[i], cairo_surface_destroy);
  G_OBJECT_CLASS (floor_parent_class)->finalize (object);
}

static void
floor_class_init (FloorClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = floor_finalize;
  GTK_WIDGET_CLASS (klass)->snapshot = floor_snapshot;
}

static void
floor_init (Floor *self)
{
}

static GtkWidget *
floor_new (gboolean has_images)
{
  Floor *self = g_object_new (TYPE_FLOOR, NULL);

  for (guint i = 0; has_images && i < G_N_ELEMENTS (self->images); i++) {
    const GdkRGBA colour = colour_of (i);
    cairo_t *cr;

    self->images[i] = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
    cr = cairo_create (self->images[i]);
    gdk_cairo_set_source_rgba (cr, &colour);
    cairo_paint (cr);
    cairo_destroy (cr);
  }
  return GTK_WIDGET (self);
}

static void
step_floor (GtkWidget *widget, guint frame)
{
  SPEED_FLOOR (widget)->frame = frame;
  gtk_widget_queue_draw (widget);
}

static void
step_fill (Bench *bench, guint frame)
{
  step_floor (bench->fill, frame);
}

static void
step_image (Bench *bench, guint frame)
{
  step_floor (bench->image, frame);
}

/* To and fro, so that the piles stay in view. */
static void
pan (GtkWidget *canvas, guint frame)
{
  const int way = frame / PAN_SWING % 2 == 0 ? 1 : -1;

  lb_plan_canvas_pan (LB_PLAN_CANVAS (canvas), way * PAN_STEP_X, way * PAN_STEP_Y);
}

static void
step_all (Bench *bench, guint frame)
{
  pan (bench->all, frame);
}

static void
step_named (Bench *bench, guint frame)
{
  pan (bench->named, frame);
}

static void
step_still (Bench *bench, guint frame)
{
  gdk_frame_clock_request_phase (gtk_widget_get_frame_clock (bench->all),
                                 GDK_FRAME_CLOCK_PHASE_PAINT);
}

static void
step_hover (Bench *bench, guint frame)
{
  LbPlanCanvas *canvas = LB_PLAN_CANVAS (bench->all);

  lb_plan_canvas_set_hovered (canvas, (int) (frame * 97 % (guint) canvas->plan->n_piles));
}

static void
take_turn (Bench *bench, Scene *scene, guint turn)
{
  gtk_stack_set_visible_child_name (GTK_STACK (bench->stack), scene->child);
  for (guint i = 0; i < NOT_TIMED + TURN; i++) {
    gint64 us;

    scene->step (bench, turn * (NOT_TIMED + TURN) + i);
    us = frame_watch_next (bench->frames);
    if (i >= NOT_TIMED)
      stopwatch_add (&scene->watch, us);
  }
}

static guint
count_in_view (GtkWidget *canvas)
{
  const int width = gtk_widget_get_width (canvas), height = gtk_widget_get_height (canvas);
  guint n = 0;
  double x, y;

  for (guint i = 0; lb_plan_canvas_pile_place (LB_PLAN_CANVAS (canvas), i, &x, &y); i++)
    n += x >= 0 && y >= 0 && x < width && y < height;
  return n;
}

/* Brings it on the screen, and nearer until at most so many piles are in view. */
static void
zoom_in (Bench *bench, const char *child, GtkWidget *canvas, guint n_wanted)
{
  gtk_stack_set_visible_child_name (GTK_STACK (bench->stack), child);
  frame_watch_next (bench->frames);
  while (count_in_view (canvas) > n_wanted)
    lb_plan_canvas_zoom (LB_PLAN_CANVAS (canvas), 1.02);
}

static GtkWidget *
canvas_new (LbJob *job, LbSelection *selection)
{
  GtkWidget *canvas = g_object_new (LB_TYPE_PLAN_CANVAS, NULL);

  lb_plan_canvas_set_selection (LB_PLAN_CANVAS (canvas), selection);
  lb_plan_canvas_set_job (LB_PLAN_CANVAS (canvas), job);
  return canvas;
}

static void
bench_init (Bench *bench, LbJob *job, LbSelection *selection)
{
  GtkStack *stack;

  bench->fill = floor_new (FALSE);
  bench->image = floor_new (TRUE);
  bench->all = canvas_new (job, selection);
  bench->named = canvas_new (job, selection);
  bench->stack = gtk_stack_new ();
  stack = GTK_STACK (bench->stack);
  gtk_stack_add_named (stack, bench->fill, "fill");
  gtk_stack_add_named (stack, bench->image, "image");
  gtk_stack_add_named (stack, bench->all, "all");
  gtk_stack_add_named (stack, bench->named, "named");

  bench->window = gtk_window_new ();
  gtk_window_set_decorated (GTK_WINDOW (bench->window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (bench->window), WIDTH, HEIGHT);
  gtk_window_set_child (GTK_WINDOW (bench->window), bench->stack);
  gtk_window_present (GTK_WINDOW (bench->window));
  bench->frames = frame_watch_new (bench->window);
  frame_watch_next (bench->frames);
}

static void
print_facts (Bench *bench)
{
  const LbPlanCanvas *named = LB_PLAN_CANVAS (bench->named);

  g_print ("# %s, window of %d x %d; %u piles in view, or %u %s names\n",
           G_OBJECT_TYPE_NAME (gtk_native_get_renderer (GTK_NATIVE (bench->window))),
           gtk_widget_get_width (bench->window), gtk_widget_get_height (bench->window),
           count_in_view (bench->all), count_in_view (bench->named),
           lb_plan_has_names (named->plan, &named->view, lb_job_get_voice (named->job))
             ? "with"
             : "without");
}

/* The canvas's own part by itself, without GTK and the display: the image of one panned frame. */
static void
measure_image (GtkWidget *widget, const char *name, guint n_frames)
{
  const LbPlanCanvas *canvas = LB_PLAN_CANVAS (widget);
  g_autoptr (LbPlanImage) image = lb_plan_image_new ();
  LbPlanView view = canvas->view;
  Stopwatch watch;

  stopwatch_init_own (&watch);
  for (guint frame = 0; frame < NOT_TIMED + n_frames; frame++) {
    view.centre_x_m += (frame / PAN_SWING % 2 == 0 ? PAN_STEP_X : -PAN_STEP_X) / view.px_per_m;
    stopwatch_begin (&watch);
    lb_plan_image_draw (image, lb_look_palette (widget), lb_job_get_voice (canvas->job),
                        canvas->plan, &view, NULL, WIDTH, HEIGHT, 1);
    if (frame >= NOT_TIMED)
      stopwatch_end (&watch);
  }
  stopwatch_print (&watch, name);
  stopwatch_clear (&watch);
}

typedef enum {
  FILL,
  IMAGE,
  ALL,
  NAMED,
  STILL,
  HOVER,
} SceneId;

static void
measure (Bench *bench, guint n_turns)
{
  Scene scenes[] = {
    [FILL] = { "a window that fills itself", "fill", step_fill },
    [IMAGE] = { "a window that shows a ready image", "image", step_image },
    [ALL] = { "all piles, panned", "all", step_all },
    [NAMED] = { "piles with names, panned", "named", step_named },
    [STILL] = { "a frame in which nothing changes", "all", step_still },
    [HOVER] = { "a highlight that moves", "all", step_hover },
  };
  double medians[G_N_ELEMENTS (scenes)];

  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
    stopwatch_init (&scenes[i].watch);
  for (guint turn = 0; turn < n_turns; turn++)
    for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
      take_turn (bench, &scenes[i], turn);
  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++) {
    stopwatch_print (&scenes[i].watch, scenes[i].name);
    medians[i] = stopwatch_median (&scenes[i].watch);
    stopwatch_clear (&scenes[i].watch);
  }
  stopwatch_print_ratio ("all piles against the fill", medians[ALL] / medians[FILL], 1.3);
  stopwatch_print_ratio ("piles with names against the fill", medians[NAMED] / medians[FILL], 1.2);
  stopwatch_print_ratio ("all piles against the image", medians[ALL] / medians[IMAGE], 1.3);
  stopwatch_print_ratio ("piles with names against the image", medians[NAMED] / medians[IMAGE],
                         1.2);
  g_print ("# the highlight's own: %.3f ms (at most 1 ms wanted)\n",
           (medians[HOVER] - medians[STILL]) / 1000);
}

int
main (int argc, char *argv[])
{
  const gboolean is_long = argc > 1 && g_str_equal (argv[1], "--long");
  const guint n_piles = is_long ? 10000 : 1000;
  const guint n_turns = is_long ? 10 : 1;
  g_autofree char *folder = g_dir_make_tmp ("lastbent-speed-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "canvas.lastbent", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = big_job_create (path, n_piles, n_piles * 20, &error);
  g_autoptr (LbSelection) selection = NULL;
  g_autoptr (LbJob) job = NULL;
  Bench bench;

  lb_frame_memory_keep (); /* as the program itself does */
  g_assert_no_error (error);
  g_clear_pointer (&book, lb_book_close);
  adw_init ();
  job = small_job_open (path);
  selection = lb_selection_new ();
  bench_init (&bench, job, selection);
  zoom_in (&bench, "all", bench.all, n_piles);
  zoom_in (&bench, "named", bench.named, n_piles / PER_NAMED);
  print_facts (&bench);
  measure (&bench, n_turns);
  measure_image (bench.all, "the image alone, all piles", n_turns * TURN);
  measure_image (bench.named, "the image alone, with names", n_turns * TURN);
  frame_watch_free (bench.frames);
  gtk_window_destroy (GTK_WINDOW (bench.window));
  g_unlink (path);
  g_rmdir (folder);
  g_print ("1..1\nok 1 - the canvas was measured\n");

  return 0;
}
