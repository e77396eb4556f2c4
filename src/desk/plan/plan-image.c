/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plan as pixels.
 *
 * Piles look alike: ten thousand of them have some hundred looks at one zoom. Each look is drawn
 * once, by the same functions that draw paper, into a sprite; a frame is the ground copied and
 * the sprites laid over it. The water and the deck, which move with the plan, are drawn straight
 * on the first page of a zoom; from the second on they are kept as a picture, with a margin all
 * round, so that panning only copies another part of it.
 *
 * Invariants:
 * 1. Sprites stand for what `made_for` says; when that changes they go. Marks and arrows depend on
 *    the zoom, names do not.
 * 2. mark_of, arrow_of and name_of are filled as piles come into view; an entry is NULL until then.
 *    The sprites belong to the tables.
 * 3. A sprite stands on whole device pixels: a mark is at most half a pixel from where the
 *    vectors would put it.
 * 4. Two pages take turns, so that the one on the screen is not drawn into.
 */
#include "desk/plan/plan-image.h"

#include "desk/plan/large-image.h"
#include "desk/plan/sprite.h"

#include <math.h>
#include <string.h>

/* Kept round the page, px: how far one can pan before water and deck are drawn again. */
#define GROUND_MARGIN 192

/* Steps in which looks are told apart; finer than can be seen. */
#define SIZES_PER_PX   8
#define LENGTHS_PER_PX 4
#define ANGLES         128
#define SHARES         240 /* so that the bars of a ring of 8, 10, 12 … are whole steps */
#define SHARE_UNKNOWN  255

/* When so many names are kept, they are all dropped and made again as they come into view. */
#define NAMES_MOST 20000

typedef struct
{
  const LbPalette *palette;
  char *font;
  double text_scale;
  LbUnits units;
  int scale;
  double px_per_m;
} MadeFor;

typedef struct
{
  gsize pile;
  int x, y; /* device px */
} Visible;

struct _LbPlanImage
{
  MadeFor made_for;
  GHashTable *marks;  /* packed look → LbSprite */
  GHashTable *arrows; /* packed look → LbSprite */
  GHashTable *names;  /* alignment and text → LbSprite */

  gsize n_piles;
  const LbSprite **mark_of;
  const LbSprite **arrow_of;
  const LbSprite **name_of;
  GArray *visible; /* Visible, of the present frame */

  int drawn_width, drawn_height; /* of the page before, px; 0 when another ground was on it */
  cairo_surface_t *ground;
  gboolean has_ground; /* whether it holds what is to be seen on such a page */
  double ground_x_m, ground_y_m;

  cairo_surface_t *pages[2];
  guint turn;
};

static void
sprite_free (gpointer sprite)
{
  lb_sprite_free (sprite);
}

LbPlanImage *
lb_plan_image_new (void)
{
  LbPlanImage *self = g_new0 (LbPlanImage, 1);

  self->marks = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, sprite_free);
  self->arrows = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, sprite_free);
  self->names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, sprite_free);
  self->visible = g_array_new (FALSE, FALSE, sizeof (Visible));

  return self;
}

static void
forget_piles (LbPlanImage *self)
{
  g_clear_pointer (&self->mark_of, g_free);
  g_clear_pointer (&self->arrow_of, g_free);
  g_clear_pointer (&self->name_of, g_free);
  self->n_piles = 0;
}

static void
forget_ground (LbPlanImage *self)
{
  self->has_ground = FALSE;
  self->drawn_width = self->drawn_height = 0;
}

void
lb_plan_image_forget_plan (LbPlanImage *self)
{
  forget_piles (self);
  forget_ground (self);
  if (g_hash_table_size (self->names) > NAMES_MOST)
    g_hash_table_remove_all (self->names);
}

void
lb_plan_image_free (LbPlanImage *self)
{
  if (self == NULL)
    return;
  forget_piles (self);
  g_clear_pointer (&self->ground, cairo_surface_destroy);
  g_hash_table_unref (self->marks);
  g_hash_table_unref (self->arrows);
  g_hash_table_unref (self->names);
  g_array_unref (self->visible);
  for (gsize i = 0; i < G_N_ELEMENTS (self->pages); i++)
    g_clear_pointer (&self->pages[i], cairo_surface_destroy);
  g_free (self->made_for.font);
  g_free (self);
}

/* Drops what was made for another look or zoom. */
static void
make_for (LbPlanImage *self,
          const LbPalette *palette,
          const LbVoice *voice,
          double px_per_m,
          int scale)
{
  MadeFor *made_for = &self->made_for;
  const gboolean is_same_look = made_for->palette == palette && made_for->scale == scale &&
                                made_for->units == voice->units &&
                                fabs (made_for->text_scale - voice->scale) < 1e-9 &&
                                g_strcmp0 (made_for->font, voice->font) == 0;

  if (is_same_look && fabs (made_for->px_per_m - px_per_m) < 1e-9 * px_per_m)
    return;

  forget_piles (self);
  forget_ground (self);
  g_hash_table_remove_all (self->marks);
  g_hash_table_remove_all (self->arrows);
  made_for->px_per_m = px_per_m;
  if (is_same_look)
    return;

  g_hash_table_remove_all (self->names);
  made_for->palette = palette;
  made_for->scale = scale;
  made_for->units = voice->units;
  made_for->text_scale = voice->scale;
  g_free (made_for->font);
  made_for->font = g_strdup (voice->font);
}

/* A clear image that reaches so far from its origin, px, and a pen whose origin is there. */
typedef struct
{
  cairo_surface_t *image;
  cairo_t *cr;
  int origin_x, origin_y;
} Sheet;

static Sheet
sheet_new (double left, double top, double right, double bottom, int scale)
{
  Sheet sheet;

  sheet.origin_x = (int) ceil (left) * scale;
  sheet.origin_y = (int) ceil (top) * scale;
  sheet.image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32,
                                            sheet.origin_x + (int) ceil (right) * scale,
                                            sheet.origin_y + (int) ceil (bottom) * scale);
  sheet.cr = cairo_create (sheet.image);
  cairo_translate (sheet.cr, sheet.origin_x, sheet.origin_y);
  cairo_scale (sheet.cr, scale, scale);
  return sheet;
}

static LbSprite *
sheet_to_sprite (Sheet *sheet)
{
  LbSprite *sprite;

  cairo_destroy (sheet->cr);
  sprite = lb_sprite_new (sheet->image, sheet->origin_x, sheet->origin_y);
  cairo_surface_destroy (sheet->image);
  return sprite;
}

static const LbSprite *
keep (GHashTable *table, gint64 look, LbSprite *sprite)
{
  g_hash_table_insert (table, g_memdup2 (&look, sizeof look), sprite);
  return sprite;
}

static const LbSprite *
find_mark (LbPlanImage *self, const LbMark *mark, double size)
{
  /* Room beyond the 1.1 sizes that extras may take, for line ends. */
  static const double SPARE = 3;
  const gint64 share = isnan (mark->share_left)
                         ? SHARE_UNKNOWN
                         : (gint64) round (CLAMP (mark->share_left, 0, 1) * SHARES);
  const gint64 look = (gint64) round (size * SIZES_PER_PX) << 16 | share << 8 |
                      (gint64) mark->shape << 6 | (gint64) mark->step << 3 |
                      (gint64) (mark->has_flag != FALSE) << 1 | (mark->is_strand != FALSE);
  const LbSprite *sprite = g_hash_table_lookup (self->marks, &look);
  Sheet sheet;
  double reach;

  if (sprite != NULL)
    return sprite;
  reach = size * 1.1 + SPARE;
  sheet = sheet_new (reach, reach, reach, reach, self->made_for.scale);
  lb_mark_draw (sheet.cr, self->made_for.palette, mark, size);
  return keep (self->marks, look, sheet_to_sprite (&sheet));
}

static const LbSprite *
find_arrow (LbPlanImage *self, LbStep step, double size, double length, double bearing)
{
  /* Room at the sides for the head. */
  static const double SPARE = 8;
  const double turns = bearing / (2 * G_PI);
  const gint64 angle = (gint64) round ((turns - floor (turns)) * ANGLES) % ANGLES;
  const gint64 look = (gint64) round (size * SIZES_PER_PX) << 32 |
                      (gint64) round (length * LENGTHS_PER_PX) << 12 | angle << 3 | (gint64) step;
  const LbSprite *sprite = g_hash_table_lookup (self->arrows, &look);
  Sheet sheet;
  double reach, x, y;

  if (sprite != NULL)
    return sprite;
  reach = size * 1.1 + length;
  x = reach * sin (bearing);
  y = -reach * cos (bearing);
  sheet = sheet_new (SPARE + MAX (-x, 0), SPARE + MAX (-y, 0), SPARE + MAX (x, 0),
                     SPARE + MAX (y, 0), self->made_for.scale);
  lb_lean_arrow_draw (sheet.cr, self->made_for.palette, step, size, length,
                      2 * G_PI * (double) angle / ANGLES);
  return keep (self->arrows, look, sheet_to_sprite (&sheet));
}

static const LbSprite *
find_name (LbPlanImage *self, const LbVoice *voice, const char *text, LbAlign align)
{
  static const double SHARE_LEFT[] = {
    [LB_ALIGN_START] = 0,
    [LB_ALIGN_MIDDLE] = 0.5,
    [LB_ALIGN_END] = 1,
  };
  static const double SPARE = 2;
  g_autofree char *key = g_strdup_printf ("%d%s", (int) align, text);
  LbSprite *sprite = g_hash_table_lookup (self->names, key);
  Sheet sheet;
  double width, height;

  if (sprite != NULL)
    return sprite;
  sheet = sheet_new (0, 0, 1, 1, 1);
  lb_text_measure (sheet.cr, voice, text, LB_PLAN_NAME_SIZE, FALSE, 0, &width, &height);
  cairo_destroy (sheet.cr);
  cairo_surface_destroy (sheet.image);

  sheet = sheet_new (SPARE + width * SHARE_LEFT[align], SPARE,
                     SPARE + width * (1 - SHARE_LEFT[align]), SPARE + height, self->made_for.scale);
  lb_ink_set (sheet.cr, self->made_for.palette, LB_INK_DIM_TEXT);
  lb_text_show (sheet.cr, voice, text, LB_PLAN_NAME_SIZE, FALSE, align, 0, 0, 0);
  sprite = sheet_to_sprite (&sheet);
  g_hash_table_insert (self->names, g_steal_pointer (&key), sprite);
  return sprite;
}

static gboolean
has_size (cairo_surface_t *image, int width, int height)
{
  return image != NULL && cairo_image_surface_get_width (image) == width &&
         cairo_image_surface_get_height (image) == height;
}

/* Draws water, deck and axes on a page of @width by @height px. */
static void
draw_water (LbPlanImage *self,
            cairo_surface_t *page,
            const LbVoice *voice,
            const LbPlan *plan,
            const LbPlanView *view,
            int width,
            int height)
{
  cairo_t *cr = cairo_create (page);

  cairo_scale (cr, self->made_for.scale, self->made_for.scale);
  lb_plan_draw_water (cr, self->made_for.palette, voice, plan, view, width, height);
  cairo_destroy (cr);
  cairo_surface_flush (page);
}

/* Has the ground hold the page and its margin; drawn again only when the page has moved off it.
 * Returns by @out_x, @out_y where the page begins in it, device px. */
static void
keep_ground (LbPlanImage *self,
             const LbVoice *voice,
             const LbPlan *plan,
             const LbPlanView *view,
             int width,
             int height,
             int *out_x,
             int *out_y)
{
  const int scale = self->made_for.scale;
  const int margin = GROUND_MARGIN * scale;
  const double px_per_m = view->px_per_m * scale;
  const double moved_x = round ((view->centre_x_m - self->ground_x_m) * px_per_m);
  const double moved_y = round ((self->ground_y_m - view->centre_y_m) * px_per_m);

  if (self->has_ground && fabs (moved_x) <= margin && fabs (moved_y) <= margin) {
    *out_x = margin + (int) moved_x;
    *out_y = margin + (int) moved_y;
    return;
  }

  if (!has_size (self->ground, width * scale + 2 * margin, height * scale + 2 * margin)) {
    g_clear_pointer (&self->ground, cairo_surface_destroy);
    self->ground = lb_large_image_new (width * scale + 2 * margin, height * scale + 2 * margin);
  }
  self->has_ground = TRUE;
  self->ground_x_m = view->centre_x_m;
  self->ground_y_m = view->centre_y_m;
  draw_water (self, self->ground, voice, plan, view, width + 2 * GROUND_MARGIN,
              height + 2 * GROUND_MARGIN);
  *out_x = margin;
  *out_y = margin;
}

static void
copy_ground (LbPlanImage *self, cairo_surface_t *page, int from_x, int from_y)
{
  const int stride = cairo_image_surface_get_stride (self->ground);
  const int page_stride = cairo_image_surface_get_stride (page);
  const int page_height = cairo_image_surface_get_height (page);
  const guint8 *from = cairo_image_surface_get_data (self->ground) +
                       (gsize) from_y * (gsize) stride + (gsize) from_x * sizeof (guint32);
  guint8 *to = cairo_image_surface_get_data (page);

  for (int y = 0; y < page_height; y++)
    memcpy (to + (gsize) y * (gsize) page_stride, from + (gsize) y * (gsize) stride,
            (gsize) cairo_image_surface_get_width (page) * sizeof (guint32));
  cairo_surface_mark_dirty (page);
}

static void
lay_ground (LbPlanImage *self,
            cairo_surface_t *page,
            const LbVoice *voice,
            const LbPlan *plan,
            const LbPlanView *view,
            int width,
            int height)
{
  int from_x, from_y;

  if (width == self->drawn_width && height == self->drawn_height) {
    keep_ground (self, voice, plan, view, width, height, &from_x, &from_y);
    copy_ground (self, page, from_x, from_y);
    return;
  }
  self->has_ground = FALSE;
  self->drawn_width = width;
  self->drawn_height = height;
  draw_water (self, page, voice, plan, view, width, height);
}

static void
find_visible (LbPlanImage *self,
              const LbPlan *plan,
              const LbPlanView *view,
              const gboolean *shown,
              int width,
              int height)
{
  const int scale = self->made_for.scale;
  /* Beyond the edge by the longest thing a mark carries: its own size, its arrow, its name. */
  const double beyond = LB_PLAN_NAME_SIZE * 4;

  g_array_set_size (self->visible, 0);
  for (gsize i = 0; i < plan->n_piles; i++) {
    LbPoint at;
    double reach;

    if (shown != NULL && !shown[i])
      continue;
    lb_plan_to_page (view, width, height, plan->piles[i].x_m, plan->piles[i].y_m, &at);
    reach = beyond + lb_plan_mark_size (plan, view, i) * 1.1 + lb_plan_arrow_length (plan, view, i);
    if (at.x > -reach && at.y > -reach && at.x < width + reach && at.y < height + reach) {
      const Visible visible = {
        .pile = i,
        .x = (int) floor (at.x * scale + 0.5),
        .y = (int) floor (at.y * scale + 0.5),
      };

      g_array_append_val (self->visible, visible);
    }
  }
}

static void
lay_arrows (LbPlanImage *self, const LbPixels *page, const LbPlan *plan, const LbPlanView *view)
{
  for (guint v = 0; v < self->visible->len; v++) {
    const Visible *at = &g_array_index (self->visible, Visible, v);
    const LbPlanPile *pile = &plan->piles[at->pile];

    if (pile->batter <= 0)
      continue;
    if (self->arrow_of[at->pile] == NULL) {
      const double length = lb_plan_arrow_length (plan, view, at->pile);

      if (length <= 0)
        continue;
      self->arrow_of[at->pile] = find_arrow (
        self, pile->mark.step, lb_plan_mark_size (plan, view, at->pile), length, pile->bearing_rad);
    }
    lb_sprite_blit (self->arrow_of[at->pile], page, at->x, at->y);
  }
}

static void
lay_marks (LbPlanImage *self, const LbPixels *page, const LbPlan *plan, const LbPlanView *view)
{
  for (guint v = 0; v < self->visible->len; v++) {
    const Visible *at = &g_array_index (self->visible, Visible, v);

    if (self->mark_of[at->pile] == NULL)
      self->mark_of[at->pile] = find_mark (self, &plan->piles[at->pile].mark,
                                           lb_plan_mark_size (plan, view, at->pile));
    lb_sprite_blit (self->mark_of[at->pile], page, at->x, at->y);
  }
}

static void
lay_names (LbPlanImage *self,
           const LbPixels *page,
           const LbVoice *voice,
           const LbPlan *plan,
           const LbPlanView *view)
{
  const int scale = self->made_for.scale;

  for (guint v = 0; v < self->visible->len; v++) {
    const Visible *at = &g_array_index (self->visible, Visible, v);
    LbPoint place;
    const LbAlign align = lb_plan_name_place (plan, view, at->pile, &place);

    if (self->name_of[at->pile] == NULL)
      self->name_of[at->pile] = find_name (self, voice, plan->piles[at->pile].label, align);
    lb_sprite_blit (self->name_of[at->pile], page, at->x + (int) floor (place.x * scale + 0.5),
                    at->y + (int) floor (place.y * scale + 0.5));
  }
}

static cairo_surface_t *
take_page (LbPlanImage *self, int width, int height)
{
  cairo_surface_t **page;

  self->turn = (self->turn + 1) % G_N_ELEMENTS (self->pages);
  page = &self->pages[self->turn];
  if (!has_size (*page, width, height)) {
    g_clear_pointer (page, cairo_surface_destroy);
    *page = lb_large_image_new (width, height);
  }
  return *page;
}

cairo_surface_t *
lb_plan_image_draw (LbPlanImage *self,
                    const LbPalette *palette,
                    const LbVoice *voice,
                    const LbPlan *plan,
                    const LbPlanView *view,
                    const gboolean *shown,
                    int width,
                    int height,
                    int scale)
{
  cairo_surface_t *image;
  cairo_t *cr;
  LbPixels page;

  g_return_val_if_fail (width > 0 && height > 0 && scale > 0, NULL);

  make_for (self, palette, voice, view->px_per_m, scale);
  if (self->n_piles != plan->n_piles) {
    forget_piles (self);
    self->n_piles = plan->n_piles;
    self->mark_of = g_new0 (const LbSprite *, plan->n_piles);
    self->arrow_of = g_new0 (const LbSprite *, plan->n_piles);
    self->name_of = g_new0 (const LbSprite *, plan->n_piles);
  }

  image = take_page (self, width * scale, height * scale);
  cairo_surface_flush (image);
  lay_ground (self, image, voice, plan, view, width, height);
  page = (LbPixels){
    .pixels = (guint32 *) (gpointer) cairo_image_surface_get_data (image),
    .stride = cairo_image_surface_get_stride (image) / (int) sizeof (guint32),
    .width = width * scale,
    .height = height * scale,
  };

  cr = cairo_create (image);
  cairo_scale (cr, scale, scale);
  lb_plan_draw_guides (cr, palette, voice, view, width, height);
  cairo_destroy (cr);
  cairo_surface_flush (image);

  find_visible (self, plan, view, shown, width, height);
  lay_arrows (self, &page, plan, view);
  lay_marks (self, &page, plan, view);
  if (lb_plan_has_names (plan, view, voice))
    lay_names (self, &page, voice, plan, view);
  cairo_surface_mark_dirty (image);

  return image;
}
