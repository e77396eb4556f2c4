/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/ground-text.h"

#include "book/book-error.h"
#include "book/table-text.h"

#include <glib/gi18n-lib.h>

/* NIST SP 811, appendix B. */
#define FOOT    0.3048
#define POUND   0.45359237
#define GRAVITY 9.80665
#define PSF     (POUND * GRAVITY / (FOOT * FOOT))

#define CLAY     N_ ("clay")
#define FRICTION N_ ("friction")

enum {
  TO,
  SOIL,
  STRENGTH,
  IN_WATER,
  N_COLUMNS,
};

static const LbTableUnit lengths[] = { { "ft", FOOT }, { "m", 1 }, { NULL, 0 } };
static const LbTableUnit strengths[] = { { "psf", PSF },
                                         { "ksf", 1000 * PSF },
                                         { "kpa", 1000 },
                                         { NULL, 0 } };
static const LbTableUnit densities[] = { { "pcf", POUND / (FOOT * FOOT * FOOT) },
                                         { "kg/m3", 1 },
                                         { "kn/m3", 1000 / GRAVITY },
                                         { NULL, 0 } };

typedef struct
{
  const LbTableUnit *units[N_COLUMNS];
  LbGround ground;
} Reading;

const char *
lb_soil_word (guint i)
{
  g_return_val_if_fail (i < LB_N_SOIL_WORDS, NULL);

  if (i == 0)
    return CLAY;
  return i <= LB_N_SANDS ? lb_sand_name ((LbSand) (i - 1)) : FRICTION;
}

static gboolean
read_heading (const LbTableLine *at, gpointer data, GError **error)
{
  Reading *reading = data;
  const LbTableUnit **units = reading->units;

  if (at->n_columns == N_COLUMNS && g_ascii_strcasecmp (at->cells[SOIL], "soil") == 0) {
    units[TO] = lb_table_heading_unit (at->cells[TO], "to", lengths);
    units[STRENGTH] = lb_table_heading_unit (at->cells[STRENGTH], "strength", strengths);
    units[IN_WATER] = lb_table_heading_unit (at->cells[IN_WATER], "in water", densities);
  }
  if (units[TO] != NULL && units[STRENGTH] != NULL && units[IN_WATER] != NULL)
    return TRUE;
  g_set_error_literal (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED,
                       _ ("The first line must be “to (ft),soil,strength (psf),in water (pcf)”: "
                          "depths below the mudline in ft or m, strengths in psf, ksf or kPa, "
                          "weights in water in pcf, kg/m3 or kN/m3"));
  return FALSE;
}

static gboolean
read_soil (const LbTableLine *at, LbSoilLayer *layer, GError **error)
{
  g_autofree char *word = g_ascii_strdown (at->cells[SOIL], -1);

  if (g_str_equal (word, CLAY))
    layer->soil = LB_SOIL_CLAY;
  else if (g_str_equal (word, FRICTION))
    layer->soil = LB_SOIL_OWN;
  else if (lb_sand_from_name (word, &layer->sand))
    layer->soil = LB_SOIL_SAND;
  else
    return lb_table_line_refuse (
      at, SOIL,
      g_strdup_printf (_ ("“%s” is no soil known here: write clay, friction, or medium dense, "
                          "dense or very dense and after it sand or sand-silt"),
                       at->cells[SOIL]),
      error);
  return TRUE;
}

/* Of a sand the density tells it. */
static gboolean
read_strength (const LbTableLine *at, double unit, LbSoilLayer *layer, GError **error)
{
  if (layer->soil != LB_SOIL_SAND) {
    if (!lb_table_line_number (at, STRENGTH, &layer->strength_pa, error))
      return FALSE;
    layer->strength_pa *= unit;
    return TRUE;
  }
  if (at->cells[STRENGTH][0] == '\0')
    return TRUE;
  return lb_table_line_refuse (
    at, STRENGTH,
    g_strdup (_ ("a sand has no strength here: leave the cell empty, or write “friction” for the "
                 "soil and the engineer’s figure")),
    error);
}

static gboolean
read_row (const LbTableLine *at, gpointer data, GError **error)
{
  Reading *reading = data;
  LbGround *ground = &reading->ground;
  LbSoilLayer layer = {
    .from_m = ground->n_layers > 0 ? ground->layers[ground->n_layers - 1].to_m : 0,
  };

  if (!lb_table_line_number (at, TO, &layer.to_m, error) || !read_soil (at, &layer, error) ||
      !read_strength (at, reading->units[STRENGTH]->si, &layer, error) ||
      !lb_table_line_number (at, IN_WATER, &layer.buoyant_kg_per_m3, error))
    return FALSE;
  layer.to_m *= reading->units[TO]->si;
  layer.buoyant_kg_per_m3 *= reading->units[IN_WATER]->si;

  const char *fault = lb_soil_layer_fault (&layer, layer.from_m);

  if (fault != NULL) {
    /* Translators: what is wrong with a layer of the ground, “The layer has no strength …”. */
    g_autofree char *said = g_strdup_printf (_ ("The layer %s"),
                                             g_dgettext (GETTEXT_PACKAGE, fault));

    return lb_table_line_refuse_all (at, said, error);
  }
  ground->layers[ground->n_layers++] = layer;
  return TRUE;
}

gboolean
lb_ground_from_text (const char *text, LbGround *out_ground, GError **error)
{
  static const LbTableForm form = {
    .rows_most = LB_SOIL_LAYERS_MAX,
    .read_heading = read_heading,
    .read_row = read_row,
  };
  Reading reading = { 0 };

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out_ground != NULL, FALSE);

  if (!lb_table_text_read (text, &form, &reading, error))
    return FALSE;
  *out_ground = reading.ground;
  return TRUE;
}
