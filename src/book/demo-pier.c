/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo's piles. All invented.
 *
 * The wharf runs out from the shore: bent 1 stands at it, bent 12 at the outer end, and rows A to G
 * lie across. Each bent has a pile in every row, one between each two rows ("AB7"), and a raker
 * outside each outer row ("RA7", "RG7"). Two dolphins of eight rakers round a plumb pile stand off
 * the outer end. Lengths are kept in whole tenths of a foot and degrees, and plan places are
 * rounded to the millimetre, so that every machine makes the same piles.
 */
#include "book/demo-pier.h"

#include "book/demo-chance.h"

#include <math.h>
#include <string.h>

/* NIST SP 811, appendix B: exact. */
#define FOOT 0.3048
#define INCH 0.0254

#define N_BENTS        12
#define N_ACROSS       13 /* seven rows and what stands between them */
#define N_RAKERS       8
#define BENTS_DEG      78 /* bearing of the wharf from the shore out */
#define BENT_TENTHS    140
#define ACROSS_TENTHS  50
#define RAKER_TENTHS   40
#define DOLPHIN_TENTHS 60
#define ORIGIN_EAST_M  310.0
#define ORIGIN_NORTH_M 560.0
#define SEED           G_GUINT64_CONSTANT (1938)

typedef struct
{
  LbShape shape;
  int width_in;
  const char *bar;
  guint n_bars;
  double inset_in;
  const char *note;
} Kind;

typedef enum {
  KIND_OCTAGON_8,
  KIND_OCTAGON_9,
  KIND_OCTAGON_11,
  KIND_SQUARE_18,
  KIND_SQUARE_6,
  KIND_OLD_SQUARE,
  KIND_STRAND,
} KindId;

static const Kind kinds[] = {
  [KIND_OCTAGON_8] = { LB_SHAPE_OCTAGON, 16, "#8", 8, 3.0, "" },
  [KIND_OCTAGON_9] = { LB_SHAPE_OCTAGON, 16, "#9", 8, 3.0, "" },
  [KIND_OCTAGON_11] = { LB_SHAPE_OCTAGON, 16, "#11", 8, 3.25, "" },
  [KIND_SQUARE_18] = { LB_SHAPE_SQUARE, 20, "#18", 4, 4.0, "Carried the crane rail" },
  [KIND_SQUARE_6] = { LB_SHAPE_SQUARE, 16, "#6", 8, 3.0, "" },
  [KIND_OLD_SQUARE] = { LB_SHAPE_SQUARE, 14, "1 in sq", 4, 3.0, "From the first wharf" },
  [KIND_STRAND] = { LB_SHAPE_SQUARE, 16, "1/2 in strand 270", 12, 3.0,
                    "Replaced in 1971: stressed strand" },
};

/* A lean: one to @rise toward @bearing_deg; 0 for a plumb pile. */
typedef struct
{
  int rise;
  int bearing_deg;
} Lean;

typedef struct
{
  GArray *piles;
  GStringChunk *strings;
  LbChance chance;
} Pier;

static double
round_mm (double m)
{
  return floor (m * 1000 + 0.5) / 1000;
}

static double
feet (int tenths)
{
  return tenths * FOOT / 10;
}

/* Tenths of a foot out from the shore and across from row A, to the grid. */
static void
place (LbPile *pile, double out_tenths, double across_tenths)
{
  const double angle = BENTS_DEG * G_PI / 180;
  const double out_m = out_tenths * FOOT / 10, across_m = across_tenths * FOOT / 10;

  pile->x_m = round_mm (ORIGIN_EAST_M + out_m * sin (angle) + across_m * cos (angle));
  pile->y_m = round_mm (ORIGIN_NORTH_M + out_m * cos (angle) - across_m * sin (angle));
}

static void
make (LbPile *pile, const Kind *kind, Lean lean)
{
  lb_pile_init (pile);
  pile->outline = (LbOutline){ .shape = kind->shape, .width_m = kind->width_in * INCH };
  pile->bar = lb_bar_find (kind->bar);
  pile->n_bars = kind->n_bars;
  pile->bar_inset_m = kind->inset_in * INCH;
  pile->note = kind->note;
  pile->batter = lean.rise > 0 ? 1.0 / lean.rise : 0;
  pile->bearing_rad = lean.rise > 0 ? (lean.bearing_deg % 360) * G_PI / 180 : 0;
  pile->unsaid = 0;
}

static void
add (Pier *pier, LbPile *pile, const char *mark, const char *bent, const char *row)
{
  pile->mark = g_string_chunk_insert (pier->strings, mark);
  pile->bent = g_string_chunk_insert_const (pier->strings, bent);
  pile->row = g_string_chunk_insert_const (pier->strings, row);
  g_array_append_val (pier->piles, *pile);
}

/* The bottom falls a foot a bent from the shore out, and four feet from row A to row G. */
static void
set_elevations (Pier *pier, LbPile *pile, int bent, int across)
{
  const int mudline = -250 - (bent - 1) * 10 - across * 10 / 3 +
                      lb_chance_between (&pier->chance, -4, 4);
  const gboolean is_broken_low = lb_chance_between (&pier->chance, 1, 9) == 1;

  pile->mudline_m = feet (mudline);
  pile->head_m = feet (is_broken_low ? lb_chance_between (&pier->chance, 5, 20)
                                     : lb_chance_between (&pier->chance, 35, 65));
  pile->toe_m = feet (mudline - lb_chance_between (&pier->chance, 160, 240));
}

/* Outer rows lean in against the push of ships, 1:4 and 1:6 in turn; every third bent is braced
 * 1:12 beside them, every fourth along the wharf; the corners lean on the diagonal. */
static Lean
lean_of (int bent, int across)
{
  const gboolean is_end = bent == 1 || bent == N_BENTS;

  if (across == 0)
    return (Lean){ bent % 2 == 1 ? 4 : 6, BENTS_DEG + 90 };
  if (across == N_ACROSS - 1)
    return (Lean){ bent % 2 == 1 ? 4 : 6, BENTS_DEG + 270 };
  if (is_end && across == 3)
    return (Lean){ 6, BENTS_DEG + (bent == 1 ? 45 : 135) };
  if (is_end && across == 9)
    return (Lean){ 6, BENTS_DEG + (bent == 1 ? 315 : 225) };
  if (across == 6 && (is_end || bent == 6))
    return (Lean){ 7, BENTS_DEG + (bent == 1 ? 0 : 180) };
  if ((across == 1 || across == N_ACROSS - 2) && bent % 3 == 0)
    return (Lean){ 12, BENTS_DEG + (across == 1 ? 90 : 270) };
  if ((across == 3 || across == 9) && bent % 4 == 0)
    return (Lean){ 8, BENTS_DEG + (across == 3 ? 0 : 180) };

  return (Lean){ 0, 0 };
}

static KindId
kind_of (int bent, int across)
{
  const gboolean is_in_row = across % 2 == 0;

  if (bent <= 2 && across > 0 && across < N_ACROSS - 1)
    return KIND_OLD_SQUARE;
  if (is_in_row && (across == 4 || across == 8))
    return KIND_SQUARE_18;
  if (bent >= 5 && bent <= 9 && across == 5)
    return KIND_STRAND;
  if (across == 7)
    return KIND_SQUARE_6;
  if (across == 0 || across == N_ACROSS - 1)
    return bent % 2 == 1 ? KIND_OCTAGON_8 : KIND_OCTAGON_9;

  return KIND_OCTAGON_8;
}

static void
add_bent (Pier *pier, int bent)
{
  g_autofree char *name = g_strdup_printf ("%d", bent);
  const double out = (bent - 1) * BENT_TENTHS;
  LbPile pile;

  for (int across = 0; across < N_ACROSS; across++) {
    const char row[] = { (char) ('A' + across / 2), '\0' };
    const char next[] = { (char) ('A' + across / 2 + across % 2), '\0' };
    const gboolean is_in_row = across % 2 == 0;
    g_autofree char *mark = g_strconcat (row, is_in_row ? "" : next, name, NULL);

    make (&pile, &kinds[kind_of (bent, across)], lean_of (bent, across));
    place (&pile, out, across * ACROSS_TENTHS);
    set_elevations (pier, &pile, bent, across);
    add (pier, &pile, mark, name, is_in_row ? row : "");
  }

  g_autofree char *left = g_strconcat ("RA", name, NULL);
  g_autofree char *right = g_strconcat ("RG", name, NULL);

  make (&pile, &kinds[KIND_OCTAGON_8], (Lean){ 5, BENTS_DEG + (bent % 2 == 1 ? 0 : 180) });
  place (&pile, out, -RAKER_TENTHS);
  set_elevations (pier, &pile, bent, 0);
  add (pier, &pile, left, name, "");

  make (&pile, &kinds[KIND_OCTAGON_8], (Lean){ 10, BENTS_DEG + (bent % 2 == 1 ? 180 : 0) });
  place (&pile, out, (N_ACROSS - 1) * ACROSS_TENTHS + RAKER_TENTHS);
  set_elevations (pier, &pile, bent, N_ACROSS - 1);
  add (pier, &pile, right, name, "");
}

/* Eight rakers lean together over a plumb pile. */
static void
add_dolphin (Pier *pier, char letter, double out, double across)
{
  LbPile pile;

  for (int i = 0; i <= N_RAKERS; i++) {
    const int toward = i * 360 / N_RAKERS;
    const double angle = (toward - BENTS_DEG) * G_PI / 180;
    const double from = i < N_RAKERS ? DOLPHIN_TENTHS : 0;
    const char mark[] = { letter, (char) ('1' + i), '\0' };
    const Lean lean = i < N_RAKERS ? (Lean){ i % 2 == 0 ? 4 : 5, toward + 180 } : (Lean){ 0, 0 };

    make (&pile, &kinds[KIND_OCTAGON_11], lean);
    place (&pile, out + from * cos (angle), across + from * sin (angle));
    pile.mudline_m = feet (-420 + lb_chance_between (&pier->chance, -3, 3));
    pile.head_m = feet (lb_chance_between (&pier->chance, 60, 80));
    pile.toe_m = feet (-640 - lb_chance_between (&pier->chance, 0, 40));
    add (pier, &pile, mark, "", "");
  }
}

GArray *
lb_demo_pier_piles (GStringChunk *strings)
{
  g_return_val_if_fail (strings != NULL, NULL);

  const double width = (N_ACROSS - 1) * ACROSS_TENTHS, out = (N_BENTS - 1) * BENT_TENTHS + 330;
  Pier pier = { .piles = g_array_new (FALSE, FALSE, sizeof (LbPile)),
                .strings = strings,
                .chance = { SEED } };

  for (int bent = 1; bent <= N_BENTS; bent++)
    add_bent (&pier, bent);
  add_dolphin (&pier, 'X', out, width / 5);
  add_dolphin (&pier, 'Y', out, width * 4 / 5);

  return pier.piles;
}
