/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The line in which people say where bars stand, read and written.
 *
 * A job's plans read it again and again, so that a pile need not carry sixty places: it is read by one
 * walk over the text, and plain numbers, which is what lb_bar_layout_to_text() writes, without any
 * memory.
 */
#include "trade/bar-layout.h"

#include "trade/trade-error.h"

#include <math.h>
#include <string.h>

/* No pile is wider than 20 ft (see the facts of a pile), so none has a bar farther from its centre;
 * the least inset is that of a pile's own bars. */
#define FARTHEST    (20 * 0.3048)
#define LEAST_INSET (0.5 * 0.0254)
/* Decimals of an inch and of a millimetre: what is typed in either comes back the same. */
#define DECIMALS_US     6
#define DECIMALS_METRIC 4

/* --- Reading ------------------------------------------------------------------------------ */

typedef struct
{
  const char *at;
  LbUnits units;
} Reader;

static void
skip_spaces (Reader *reader)
{
  while (g_ascii_isspace (*reader->at))
    reader->at++;
}

static gboolean
take (Reader *reader, const char *words)
{
  const gsize n = strlen (words);

  skip_spaces (reader);
  if (g_ascii_strncasecmp (reader->at, words, n) != 0)
    return FALSE;
  reader->at += n;
  return TRUE;
}

static gboolean
is_at_end (Reader *reader)
{
  skip_spaces (reader);
  return *reader->at == '\0';
}

static gboolean
take_count (Reader *reader, guint *out_count)
{
  guint count = 0;

  skip_spaces (reader);
  if (!g_ascii_isdigit (*reader->at))
    return FALSE;
  for (; g_ascii_isdigit (*reader->at); reader->at++)
    count = MIN (count * 10 + (guint) (*reader->at - '0'), LB_BARS_MAX + 1);
  *out_count = count;
  return count >= 1 && count <= LB_BARS_MAX;
}

/* A length up to @end, which is not part of it. */
static gboolean
read_size (LbUnits units, const char *from, const char *end, double *out_m)
{
  char text[40];
  const gsize n = (gsize) (end - from);
  char *rest;

  if (n == 0 || n >= sizeof text)
    return FALSE;
  memcpy (text, from, n);
  text[n] = '\0';
  *out_m = lb_quantity_to_si (LB_QUANTITY_SIZE, units, g_ascii_strtod (text, &rest));
  return (rest != text && *rest == '\0' && isfinite (*out_m)) ||
         lb_quantity_from_text (LB_QUANTITY_SIZE, units, text, out_m, NULL);
}

/* One of a pair: up to the next space or semicolon. */
static gboolean
take_size (Reader *reader, double *out_m)
{
  skip_spaces (reader);

  const char *from = reader->at;
  const gsize n = strcspn (from, " \t\n;");

  reader->at += n;
  return read_size (reader->units, from, from + n - (n > 0 && from[n - 1] == ','), out_m) &&
         fabs (*out_m) <= FARTHEST;
}

static gboolean
read_given (Reader *reader, LbBarLayout *layout)
{
  layout->kind = LB_BAR_LAYOUT_GIVEN;
  do {
    LbPoint *place = &layout->given[layout->n_given];

    if (layout->n_given == LB_BARS_MAX || !take_size (reader, &place->x) ||
        !take_size (reader, &place->y))
      return FALSE;
    layout->n_given++;
    skip_spaces (reader);
  } while (take (reader, ";") && !is_at_end (reader));
  return is_at_end (reader);
}

static gboolean
read_rings (Reader *reader, LbBarLayout *layout)
{
  layout->kind = LB_BAR_LAYOUT_TWO_RINGS;
  take (reader, ",");
  if (!take_count (reader, &layout->n_inner) || !take (reader, "inner") || !take (reader, "at"))
    return FALSE;
  skip_spaces (reader);
  return layout->n_outer + layout->n_inner <= LB_BARS_MAX &&
         read_size (reader->units, reader->at, reader->at + strlen (reader->at),
                    &layout->inner_inset_m) &&
         layout->inner_inset_m >= LEAST_INSET && layout->inner_inset_m <= FARTHEST;
}

static gboolean
read_layout (Reader *reader, LbBarLayout *layout)
{
  guint count;

  if (is_at_end (reader))
    return TRUE;
  if (take (reader, "at "))
    return read_given (reader, layout);
  if (!take_count (reader, &count))
    return FALSE;
  layout->n_on_face = layout->n_outer = count;
  if (take (reader, "outer"))
    return read_rings (reader, layout);
  if (take (reader, "on each face")) {
    layout->kind = LB_BAR_LAYOUT_ON_FACES;
    return count >= 2 && is_at_end (reader);
  }
  layout->kind = LB_BAR_LAYOUT_BETWEEN_CORNERS;
  return take (reader, "between corners") && is_at_end (reader);
}

gboolean
lb_bar_layout_from_text (const char *text, LbUnits units, LbBarLayout *out_layout, GError **error)
{
  g_return_val_if_fail (text, FALSE);
  g_return_val_if_fail (out_layout, FALSE);

  Reader reader = { .at = text, .units = units };
  LbBarLayout layout;

  /* All but the places, which most have none of. */
  layout.kind = LB_BAR_LAYOUT_USUAL;
  layout.n_on_face = layout.n_outer = layout.n_inner = layout.n_given = 0;
  layout.inner_inset_m = 0;
  if (!read_layout (&reader, &layout)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "“%s” is not understood; write “3 on each face”, “2 between corners”, “8 outer, 4 "
                 "inner at 7”, or each bar’s place as “at 3.5 3.5; 3.5 -3.5”, at most %d bars",
                 text, LB_BARS_MAX);
    return FALSE;
  }
  memcpy (out_layout, &layout,
          G_STRUCT_OFFSET (LbBarLayout, given) + layout.n_given * sizeof layout.given[0]);
  return TRUE;
}

/* --- Writing ------------------------------------------------------------------------------ */

static void
append_size (GString *text, LbUnits units, double si)
{
  g_autofree char *number = lb_number_to_text (lb_quantity_from_si (LB_QUANTITY_SIZE, units, si),
                                               units == LB_UNITS_US ? DECIMALS_US : DECIMALS_METRIC,
                                               &LB_NUMBER_PLAIN);

  g_string_append (text, number);
}

char *
lb_bar_layout_to_text (const LbBarLayout *layout, LbUnits units)
{
  g_return_val_if_fail (layout, NULL);

  GString *text = g_string_new (NULL);

  switch (layout->kind) {
  case LB_BAR_LAYOUT_USUAL:
    break;
  case LB_BAR_LAYOUT_ON_FACES:
    g_string_printf (text, "%u on each face", layout->n_on_face);
    break;
  case LB_BAR_LAYOUT_BETWEEN_CORNERS:
    g_string_printf (text, "%u between corners", layout->n_on_face);
    break;
  case LB_BAR_LAYOUT_TWO_RINGS:
    g_string_printf (text, "%u outer, %u inner at ", layout->n_outer, layout->n_inner);
    append_size (text, units, layout->inner_inset_m);
    break;
  case LB_BAR_LAYOUT_GIVEN:
    for (guint i = 0; i < layout->n_given; i++) {
      g_string_append (text, i == 0 ? "at " : "; ");
      append_size (text, units, layout->given[i].x);
      g_string_append_c (text, ' ');
      append_size (text, units, layout->given[i].y);
    }
    break;
  }
  return g_string_free (text, FALSE);
}

/* --- Standing ----------------------------------------------------------------------------- */

guint
lb_bar_layout_count (const LbBarLayout *layout, LbShape shape)
{
  g_return_val_if_fail (layout, 0);

  const guint n_faces = lb_shape_faces (shape);

  switch (layout->kind) {
  case LB_BAR_LAYOUT_USUAL:
    return 0;
  case LB_BAR_LAYOUT_ON_FACES:
    return n_faces > 0 ? n_faces * (layout->n_on_face - 1) : LB_BARS_MAX + 1;
  case LB_BAR_LAYOUT_BETWEEN_CORNERS:
    return n_faces > 0 ? n_faces * layout->n_on_face : LB_BARS_MAX + 1;
  case LB_BAR_LAYOUT_TWO_RINGS:
    return layout->n_outer + layout->n_inner;
  case LB_BAR_LAYOUT_GIVEN:
    return layout->n_given;
  }
  g_return_val_if_reached (0);
}

void
lb_bar_layout_place (const LbBarLayout *layout,
                     const LbOutline *outline,
                     double inset_m,
                     guint n_bars,
                     LbPoint places[LB_BARS_MAX])
{
  g_return_if_fail (layout);
  g_return_if_fail (outline);
  g_return_if_fail (places);
  g_return_if_fail (n_bars >= 1 && n_bars <= LB_BARS_MAX);

  const guint count = lb_bar_layout_count (layout, outline->shape);

  g_return_if_fail (count == 0 || count == n_bars);

  switch (layout->kind) {
  case LB_BAR_LAYOUT_USUAL:
    lb_bar_ring_place (outline, inset_m, n_bars, places);
    break;
  case LB_BAR_LAYOUT_ON_FACES:
    lb_bar_faces_place (outline, inset_m, layout->n_on_face - 1, TRUE, places);
    break;
  case LB_BAR_LAYOUT_BETWEEN_CORNERS:
    lb_bar_faces_place (outline, inset_m, layout->n_on_face, FALSE, places);
    break;
  case LB_BAR_LAYOUT_TWO_RINGS:
    lb_bar_ring_place (outline, inset_m, layout->n_outer, places);
    lb_bar_ring_place (outline, layout->inner_inset_m, layout->n_inner, places + layout->n_outer);
    break;
  case LB_BAR_LAYOUT_GIVEN:
    memcpy (places, layout->given, n_bars * sizeof *places);
    break;
  }
}
