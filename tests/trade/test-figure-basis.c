/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of what figures rest on is true: each input is turned, alone, on several piles, and the
 * figures that follow it are just those that name it, themselves or through others. */
#include "trade/figure-basis.h"

#include <math.h>
#include <string.h>

#define FOOT 0.3048
#define INCH 0.0254

/* All that a plan is made from, to be turned. */
typedef struct
{
  LbPile pile;
  LbBarSet burned;
  guint n_unplaced;
  LbAssumptions assumptions;
  LbBurnSample samples[2];
  gsize n_samples;
  LbBurnShift shifts[1];
  gsize n_shifts;
  LbVisibility visibility;
  const LbDiveTable *table;
  LbCraneChart chart;
  LbGround ground;
} World;

static void
reckon (const World *world, LbCutPlan *plan)
{
  LbCutBasis basis = lb_cut_basis (&world->assumptions);
  LbBurnModel model;

  lb_burn_model_fit (world->samples, world->n_samples, world->shifts, world->n_shifts,
                     &world->assumptions, &model);
  basis.burn = &model;
  basis.visibility = world->visibility;
  basis.table = world->table;
  basis.chart = &world->chart;
  basis.crane = lb_crane_here (&world->assumptions, &world->chart);
  basis.ground = world->ground.n_layers > 0 ? &world->ground : NULL;
  lb_cut_plan_reckon (&world->pile, world->burned, 0, world->n_unplaced, &basis, plan);
}

/* A 16-in square pile of eight bars #8 that leans 1:12, 30 ft of water over the cut. */
static World
plain_world (void)
{
  World world = { .visibility = LB_VISIBILITY_POOR };

  lb_pile_init (&world.pile);
  world.pile.unsaid = 0;
  world.pile.outline.width_m = 16 * INCH;
  world.pile.bar = lb_bar_find ("#8");
  world.pile.n_bars = 8;
  world.pile.batter = 1.0 / 12;
  world.pile.head_m = 6 * FOOT;
  world.pile.cut_m = -30 * FOOT;
  world.pile.mudline_m = -31 * FOOT;
  world.pile.toe_m = -50 * FOOT;
  world.pile.is_to_be_drawn = TRUE;
  lb_assumptions_init (&world.assumptions);
  world.assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 12000;
  world.assumptions.value[LB_ASSUME_SLING_RATING] = 3000;
  world.assumptions.value[LB_ASSUME_BED] = LB_ASSUME_BED_MUD;
  world.assumptions.value[LB_ASSUME_LIST] = 0.01;
  world.ground = (LbGround){
    .n_layers = 1,
    .layers = { { .to_m = 20, .soil = LB_SOIL_OWN, .strength_pa = 1e4, .buoyant_kg_per_m3 = 900 } },
  };
  world.samples[0] = (LbBurnSample){ .n_bars = 8,
                                     .steel_m2 = 8 * world.pile.bar->area_m2,
                                     .bar = world.pile.bar,
                                     .visibility = LB_VISIBILITY_POOR,
                                     .trigger_s = 220,
                                     .reason = "" };
  world.samples[1] = world.samples[0];
  world.samples[1].visibility = LB_VISIBILITY_GOOD;
  world.samples[1].trigger_s = 150;
  world.shifts[0] = (LbBurnShift){ .n_bars = 16,
                                   .trigger_s = 370,
                                   .wall_s = 2200,
                                   .rods = 11,
                                   .oxygen_m3 = 6,
                                   .flow_scale = 1.1,
                                   .reason = "" };
  return world;
}

typedef enum {
  WORLD_PLAIN,
  WORLD_MUDLINE, /* no cut elevation */
  WORLD_HOLLOW,  /* with growth, cut to lengths */
  WORLD_FLAT,    /* an allowance for the hose, and the yield point from papers */
  WORLD_DRY,     /* cut above the water */
  WORLD_PLUMB,   /* only the current bends it */
  WORLD_LEARNED, /* from two piles and a shift */
  WORLD_LARGE,   /* so much of everything that whole numbers follow, too; no cut elevation */
  WORLD_LARGE_LEARNED,
  WORLD_NEAR,    /* just under 75 % of what the chart says, on a barge that lists */
  WORLD_OVER,    /* just over it, be it light; tapered */
  WORLD_WEAK,    /* a crane that lifts it in several lengths */
  WORLD_SLENDER, /* plumb in slack water, on thin bars bared so far that they buckle */
  WORLD_TAPERED, /* and so heavy that it is cut to lengths */
  WORLD_LARGE_TAPERED,
  WORLD_BARGE,      /* under 75 % of what the chart says on a barge that the load heels, tapered */
  WORLD_BARGE_WEAK, /* the same, in several lengths */
} WorldKind;

#define N_WORLDS (WORLD_BARGE_WEAK + 1)

/* A hollow pile of 50 bars that hardly leans, small cylinders, deep water, a weak crane. */
static void
make_large (World *world)
{
  double *value = world->assumptions.value;

  world->pile.outline = (LbOutline){ .shape = LB_SHAPE_ROUND, .width_m = 1.8, .void_m = 1.2 };
  world->pile.n_bars = 50;
  world->pile.bar = lb_bar_find ("#11");
  world->pile.batter = 0.01;
  world->pile.cut_m = (double) NAN;
  world->pile.mudline_m = -33;
  world->pile.head_m = -18;
  value[LB_ASSUME_CUT_GAP] = 0.5;
  value[LB_ASSUME_GROWTH_THICKNESS] = 0.1;
  value[LB_ASSUME_CURRENT] = 0.1;
  value[LB_ASSUME_CYLINDER_CONTENT] = 0.7;
  value[LB_ASSUME_CRANE_CAPACITY] = 2200;
}

/* A hollow, plumb pile, tapered for the light end, whose light or heavy end is such a share of a crane's capacity, by its chart. */
static void
make_charted (World *world, double share, gboolean is_light)
{
  double *value = world->assumptions.value;
  LbCutPlan plan;

  world->pile.outline = (LbOutline){ .shape = LB_SHAPE_ROUND, .width_m = 0.9, .void_m = 0.5 };
  world->pile.batter = 0;
  world->pile.cut_m = (double) NAN;
  if (is_light)
    world->pile.tip_width_m = 0.8;
  value[LB_ASSUME_GROWTH_THICKNESS] = 0.05;
  value[LB_ASSUME_GROWTH_HIGH] = 0.1;
  value[LB_ASSUME_ABSORBED] = 0.04;
  value[LB_ASSUME_CRANE_RADIUS] = 10;
  value[LB_ASSUME_TIP_HEIGHT] = 25;
  value[LB_ASSUME_LIST] = value[LB_ASSUME_TRIM] = 2 * G_PI / 180;
  world->chart = (LbCraneChart){
    .n_rows = 3,
    .rows = { { .radius_m = 10.9, .capacity_n = 2e6 },
              { .radius_m = 11.3, .capacity_n = 1e6 },
              { .radius_m = 12.2, .capacity_n = 5e5 } },
  };
  reckon (world, &plan);
  const LbRange present = plan.figures[LB_FIGURE_CRANE_SHARE].range;

  for (guint i = 0; i < world->chart.n_rows; i++)
    world->chart.rows[i].capacity_n *= (is_light ? present.low : present.high) / share;
}

/* The list is that of the load. */
static void
make_barge (World *world, double share, gboolean is_light)
{
  double *value = world->assumptions.value;

  value[LB_ASSUME_BARGE_LENGTH] = 30;
  value[LB_ASSUME_BARGE_BEAM] = 12;
  value[LB_ASSUME_BARGE_DRAFT] = 1.2;
  value[LB_ASSUME_BARGE_FREEBOARD] = 1;
  value[LB_ASSUME_BARGE_GRAVITY] = 5;
  make_charted (world, share, is_light);
  value[LB_ASSUME_LIST] = 0;
}

static World
world_of (WorldKind kind)
{
  World world = plain_world ();

  switch (kind) {
  case WORLD_MUDLINE:
    world.pile.cut_m = (double) NAN;
    break;
  case WORLD_HOLLOW:
    world.pile.outline = (LbOutline){ .shape = LB_SHAPE_ROUND, .width_m = 0.9, .void_m = 0.5 };
    world.pile.n_bars = 12;
    world.assumptions.value[LB_ASSUME_GROWTH_THICKNESS] = 2 * INCH;
    world.assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 4000;
    break;
  case WORLD_FLAT:
    world.assumptions.value[LB_ASSUME_HOSE_LOSS] = 2000;
    world.assumptions.value[LB_ASSUME_STEEL_YIELD] = 300e6;
    break;
  case WORLD_DRY:
    world.pile.cut_m = 1 * FOOT;
    break;
  case WORLD_PLUMB:
    world.pile.batter = 0;
    world.assumptions.value[LB_ASSUME_CURRENT] = 1;
    break;
  case WORLD_LEARNED:
    world.n_samples = G_N_ELEMENTS (world.samples);
    world.n_shifts = G_N_ELEMENTS (world.shifts);
    break;
  case WORLD_LARGE_LEARNED:
    world.n_samples = G_N_ELEMENTS (world.samples);
    world.n_shifts = G_N_ELEMENTS (world.shifts);
    make_large (&world);
    break;
  case WORLD_LARGE:
    make_large (&world);
    break;
  case WORLD_TAPERED:
    world.pile.outline.width_m = 24 * INCH;
    world.pile.tip_width_m = 12 * INCH;
    world.pile.toe_m = -60 * FOOT;
    world.assumptions.value[LB_ASSUME_CRANE_CAPACITY] = 2500;
    break;
  case WORLD_LARGE_TAPERED:
    make_large (&world);
    world.pile.tip_width_m = 1.3;
    world.pile.toe_m = -45;
    break;
  case WORLD_NEAR:
    make_charted (&world, LB_CRITICAL_SHARE - 1e-6, FALSE);
    break;
  case WORLD_OVER:
    make_charted (&world, LB_CRITICAL_SHARE + 1e-6, TRUE);
    break;
  case WORLD_WEAK:
    make_charted (&world, 3.3, FALSE);
    break;
  case WORLD_BARGE:
    make_barge (&world, 0.7, TRUE);
    break;
  case WORLD_BARGE_WEAK:
    make_barge (&world, 3.3, FALSE);
    break;
  case WORLD_SLENDER:
    world.pile.bar = lb_bar_find ("#6");
    world.pile.n_bars = 24;
    world.pile.batter = 0;
    world.assumptions.value[LB_ASSUME_CURRENT] = 0;
    world.assumptions.value[LB_ASSUME_CUT_GAP] = lb_assumption (LB_ASSUME_CUT_GAP)->most;
    break;
  case WORLD_PLAIN:
  default:
    break;
  }
  return world;
}

/* --- Turning one input -------------------------------------------------------------------- */

static double
turned (double value, int turn)
{
  static const double by[] = { 0.3, 0.8, 1.25, 3 };

  return value * by[turn];
}

#define N_TURNS 6

/* FALSE when there is no such turn of it. */
static gboolean
turn_assumption (World *world, LbAssumptionId id, int turn)
{
  const LbAssumption *row = lb_assumption (id);
  double *value = &world->assumptions.value[id];

  if (turn < 4 && *value == 0)
    return FALSE;
  *value = turn < 4 ? turned (*value, turn) : turn == 4 ? row->least : row->most;
  /* Far beyond any water there is: both ends would leave nothing to turn. */
  if (id == LB_ASSUME_WATER_LEVEL)
    *value = (turn - 2) * 3;
  *value = CLAMP (*value, row->least, row->most);
  return TRUE;
}

static gboolean
turn_fact (World *world, LbFact fact, int turn)
{
  static const char *const orders[] = { LB_ORDER_HIGH_SIDE,       "1, 2, 3, 4, 5, 6, 7, 8",
                                        "1, 5, 2, 6, 3, 7, 4, 8", "4, 5, 3, 6, 2, 7, 1, 8",
                                        "8, 7, 6, 5, 4, 3, 2, 1", "3, 4, 5, 6, 7, 8, 1, 2" };
  static const char *const bars[] = { "#6", "#7", "#9", "#10", "#11", "#18" };
  static const char *const places[] = { "3 on each face", "4 outer, 4 inner at 150" };
  LbPile *pile = &world->pile;

  switch (fact) {
  case LB_FACT_SHAPE:
    if (turn >= LB_N_SHAPES)
      return FALSE;
    pile->outline.shape = (LbShape) turn;
    return TRUE;
  case LB_FACT_WIDTH:
    pile->outline.width_m *= 1 + 0.1 * (turn + 1);
    return TRUE;
  case LB_FACT_TIP_WIDTH:
    pile->tip_width_m = (0.75 - 0.05 * turn) * pile->outline.width_m;
    if (isnan (pile->toe_m))
      pile->toe_m = -50;
    return TRUE;
  case LB_FACT_VOID:
    pile->outline.void_m = 0.05 * turn;
    return TRUE;
  case LB_FACT_BAR:
    pile->bar = lb_bar_find (bars[turn]);
    return TRUE;
  case LB_FACT_N_BARS:
    pile->n_bars += (guint) turn + 1;
    return TRUE;
  case LB_FACT_BAR_INSET:
    pile->bar_inset_m = (2.5 + 0.5 * turn) * INCH;
    return TRUE;
  case LB_FACT_BAR_PLACES:
    if (turn >= (int) G_N_ELEMENTS (places))
      return FALSE;
    pile->bar_places = places[turn];
    return TRUE;
  case LB_FACT_BATTER:
    pile->batter += 0.05 * (turn + 1);
    return TRUE;
  case LB_FACT_BEARING:
    pile->bearing_rad += turn + 1;
    return TRUE;
  case LB_FACT_HEAD:
    pile->head_m += turn + 1;
    return TRUE;
  case LB_FACT_CUT:
    pile->cut_m = (isnan (pile->cut_m) ? pile->mudline_m : pile->cut_m) - (turn + 1);
    return TRUE;
  case LB_FACT_MUDLINE:
    pile->mudline_m -= turn + 1;
    return TRUE;
  case LB_FACT_TOE:
    pile->toe_m = pile->mudline_m - (turn + 1);
    return TRUE;
  case LB_FACT_CONCRETE:
    if (turn >= LB_N_CONCRETE_LEFT)
      return FALSE;
    pile->concrete = (LbConcreteLeft) turn;
    return TRUE;
  case LB_FACT_PINNED:
    pile->pinned = LB_BAR (turn) | LB_BAR (turn + 1);
    return TRUE;
  case LB_FACT_ORDER:
    pile->order = orders[turn];
    return TRUE;
  case LB_FACT_REMOVAL:
    pile->is_to_be_drawn = !pile->is_to_be_drawn;
    return TRUE;
  case LB_FACT_MARK:
  case LB_FACT_BENT:
  case LB_FACT_ROW:
  case LB_FACT_NOTE:
    pile->mark = pile->bent = pile->row = pile->note = "another";
    return TRUE;
  case LB_FACT_X:
  case LB_FACT_Y:
    pile->x_m += turn + 1;
    pile->y_m -= turn + 1;
    return TRUE;
  default:
    g_assert_not_reached ();
  }
}

/* Only the one lesson changes; the rates are told apart by what the shift says of each. */
static gboolean
turn_lesson (World *world, LbLesson lesson, int turn)
{
  if (turn >= 4 || world->n_samples == 0)
    return FALSE;
  if (lesson == LB_LESSON_TRIGGER)
    world->samples[0].trigger_s = turned (world->samples[0].trigger_s, turn);
  else if (lesson == LB_LESSON_RODS)
    world->shifts[0].rods = turned (world->shifts[0].rods, turn);
  else if (lesson == LB_LESSON_OXYGEN)
    world->shifts[0].oxygen_m3 = turned (world->shifts[0].oxygen_m3, turn);
  else
    world->shifts[0].wall_s = turned (world->shifts[0].wall_s, turn);
  return TRUE;
}

static const LbDiveTable *
short_table (void)
{
  static LbDiveTable table = {
    .n_rows = 2,
    .rows = { { .depth = 30, .limit = 20 }, { .depth = 190, .limit = 12 } },
  };

  return &table;
}

static gboolean
turn_input (World *world, const LbInput *input, int turn)
{
  switch (input->kind) {
  case LB_INPUT_FACT:
    return turn_fact (world, (LbFact) input->id, turn);
  case LB_INPUT_ASSUMPTION:
    return turn_assumption (world, (LbAssumptionId) input->id, turn);
  case LB_INPUT_BURNED:
    world->burned = LB_BAR (turn) | LB_BAR (turn + 1);
    return TRUE;
  case LB_INPUT_LESSON:
    return turn_lesson (world, (LbLesson) input->id, turn);
  case LB_INPUT_VISIBILITY:
    if (turn >= LB_N_VISIBILITIES)
      return FALSE;
    world->visibility = (LbVisibility) turn;
    return TRUE;
  case LB_INPUT_DIVE_TABLE:
    world->table = short_table ();
    return TRUE;
  case LB_INPUT_CRANE_CHART:
    world->chart.rows[1].capacity_n *= 0.6 + 0.2 * turn;
    return world->chart.n_rows > 0;
  case LB_INPUT_GROUND:
    world->ground.layers[0].strength_pa *= turn + 2;
    return TRUE;
  case LB_INPUT_FIGURE:
  default:
    g_assert_not_reached ();
  }
}

/* --- What moves --------------------------------------------------------------------------- */

static gboolean
differs (double a, double b)
{
  if (isnan (a) || isnan (b))
    return isnan (a) != isnan (b);
  return a != b && !(fabs (a - b) <= 1e-9 * (fabs (a) + fabs (b)));
}

/* The figures that turning the input moves in some world, a bit each. */
static guint64
moved_by (const LbInput *input)
{
  guint64 moved = 0;

  for (int kind = 0; kind < N_WORLDS; kind++) {
    const World before = world_of ((WorldKind) kind);
    LbCutPlan was;

    reckon (&before, &was);
    for (int turn = 0; turn < N_TURNS; turn++) {
      World world = before;
      LbCutPlan is;

      if (!turn_input (&world, input, turn))
        continue;
      reckon (&world, &is);
      for (int id = 0; id < LB_N_FIGURES; id++) {
        const LbRange *a = &was.figures[id].range, *b = &is.figures[id].range;

        if (differs (a->likely, b->likely) || differs (a->low, b->low) ||
            differs (a->high, b->high))
          moved |= G_GUINT64_CONSTANT (1) << id;
      }
    }
  }
  return moved;
}

static gboolean
names_itself (LbFigureId id, const LbInput *input)
{
  LbInput inputs[LB_INPUTS_MAX];
  const gsize n = lb_figure_inputs (id, inputs);

  for (gsize i = 0; i < n; i++)
    if (inputs[i].kind == input->kind && inputs[i].id == input->id)
      return TRUE;
  return FALSE;
}

static gboolean
rests_on (LbFigureId id, const LbInput *input)
{
  LbInput inputs[LB_INPUTS_MAX];
  const gsize n = lb_figure_inputs (id, inputs);

  if (names_itself (id, input))
    return TRUE;
  for (gsize i = 0; i < n; i++)
    if (inputs[i].kind == LB_INPUT_FIGURE && rests_on ((LbFigureId) inputs[i].id, input))
      return TRUE;
  return FALSE;
}

/* Calls for every input there is but figures. */
static void
for_inputs (void (*each) (const LbInput *input, gpointer data), gpointer data)
{
  static const struct
  {
    LbInputKind kind;
    int n;
  } kinds[] = {
    { LB_INPUT_FACT, LB_N_FACTS },
    { LB_INPUT_BURNED, 1 },
    { LB_INPUT_ASSUMPTION, LB_N_ASSUMPTIONS },
    { LB_INPUT_LESSON, LB_N_LESSONS },
    { LB_INPUT_VISIBILITY, 1 },
    { LB_INPUT_DIVE_TABLE, 1 },
    { LB_INPUT_CRANE_CHART, 1 },
    { LB_INPUT_GROUND, 1 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    for (int id = 0; id < kinds[i].n; id++) {
      const LbInput input = { .kind = kinds[i].kind, .id = id };

      each (&input, data);
    }
  }
}

static const char *
name_of (const LbInput *input)
{
  if (input->kind == LB_INPUT_FACT)
    return lb_fact_name ((LbFact) input->id);
  if (input->kind == LB_INPUT_ASSUMPTION)
    return lb_assumption ((LbAssumptionId) input->id)->key;
  return input->kind == LB_INPUT_BURNED       ? "burned"
         : input->kind == LB_INPUT_LESSON     ? "a lesson"
         : input->kind == LB_INPUT_VISIBILITY ? "visibility"
         : input->kind == LB_INPUT_GROUND     ? "ground"
                                              : "table";
}

static void
check_input (const LbInput *input, gpointer data)
{
  const guint64 moved = moved_by (input);
  guint *n_wrong = data;

  for (int id = 0; id < LB_N_FIGURES; id++) {
    const gboolean is_named = rests_on ((LbFigureId) id, input);
    const gboolean is_moved = (moved >> id) & 1;

    if (is_named == is_moved)
      continue;
    g_test_message ("%s %s %s", lb_figure_key ((LbFigureId) id),
                    is_named ? "does not follow" : "is moved unnamed by", name_of (input));
    *n_wrong += 1;
  }
}

static void
test_true (void)
{
  guint n_wrong = 0;

  for_inputs (check_input, &n_wrong);
  g_assert_cmpuint (n_wrong, ==, 0);
}

/* --- Figures as inputs -------------------------------------------------------------------- */

typedef struct
{
  LbFigureId of, through;
  gboolean is_shown;
} Way;

/* An input that the figure does not name itself, and that moves both. */
static void
look_for_way (const LbInput *input, gpointer data)
{
  Way *way = data;

  if (way->is_shown || names_itself (way->of, input) || !rests_on (way->through, input))
    return;
  const guint64 moved = moved_by (input);

  way->is_shown = ((moved >> way->of) & 1) && ((moved >> way->through) & 1);
}

static void
test_figures_as_inputs (void)
{
  for (int id = 0; id < LB_N_FIGURES; id++) {
    LbInput inputs[LB_INPUTS_MAX];
    const gsize n = lb_figure_inputs ((LbFigureId) id, inputs);

    for (gsize i = 0; i < n; i++) {
      Way way = { .of = (LbFigureId) id, .through = (LbFigureId) inputs[i].id };

      if (inputs[i].kind != LB_INPUT_FIGURE)
        continue;
      for_inputs (look_for_way, &way);
      g_test_message ("%s through %s", lb_figure_key (way.of), lb_figure_key (way.through));
      g_assert_true (way.is_shown);
    }
  }
}

/* --- In play ------------------------------------------------------------------------------ */

/* What is out of play for a pile moves nothing of it. */
static void
test_in_play (void)
{
  for (int kind = 0; kind < N_WORLDS; kind++) {
    const World world = world_of ((WorldKind) kind);
    LbCutPlan was;

    reckon (&world, &was);
    for (int id = 0; id < LB_N_FIGURES; id++) {
      LbInput all[LB_INPUTS_MAX], some[LB_INPUTS_MAX];
      const gsize n_all = lb_figure_inputs ((LbFigureId) id, all);
      const gsize n_some = lb_figure_inputs_in_play ((LbFigureId) id, &world.pile,
                                                     &world.assumptions, some);
      gsize at = 0;

      for (gsize i = 0; i < n_all; i++) {
        World other = world;
        LbCutPlan is;

        if (at < n_some && all[i].kind == some[at].kind && all[i].id == some[at].id) {
          at++;
          continue;
        }
        g_test_message ("world %d, %s: %s", kind, lb_figure_key ((LbFigureId) id),
                        name_of (&all[i]));
        if (!turn_input (&other, &all[i], 2))
          continue;
        reckon (&other, &is);
        g_assert_false (differs (was.figures[id].range.likely, is.figures[id].range.likely));
        g_assert_false (differs (was.figures[id].range.high, is.figures[id].range.high));
      }
      g_assert_cmpuint (at, ==, n_some);
    }
  }
}

static void
test_words (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "docs", "methods.md", NULL);
  g_autofree char *methods = NULL;

  g_assert_true (g_file_get_contents (path, &methods, NULL, NULL));
  for (int id = 0; id < LB_N_FIGURES; id++) {
    g_autofree char *heading = g_strdup_printf ("## %s\n", lb_figure_section ((LbFigureId) id));

    g_test_message ("%s: %s", lb_figure_key ((LbFigureId) id), heading);
    g_assert_nonnull (strstr (methods, heading));
    g_assert_true (lb_figure_formula ((LbFigureId) id) != NULL);
    g_assert_true (lb_figure_source ((LbFigureId) id) != NULL);
  }
}

/* A fact that the pile lacks and the figure needs leaves it unknown, and is said. */
static void
test_lacks (void)
{
  World world = plain_world ();
  LbCutPlan plan;

  guint32 all = 0;

  g_assert_cmphex (lb_pile_lacks (&world.pile), ==, 0);
  lb_pile_init (&world.pile);
  reckon (&world, &plan);
  for (int id = 0; id < LB_N_FIGURES; id++) {
    gboolean lacks_any = FALSE;

    for (int fact = 0; fact < LB_N_FACTS; fact++)
      lacks_any |= lb_figure_lacks ((LbFigureId) id, (LbFact) fact, &world.pile);
    g_test_message ("%s", lb_figure_key ((LbFigureId) id));
    for (int fact = 0; fact < LB_N_FACTS && id != LB_FIGURE_WHOLE_PULL; fact++)
      all |= (guint32) lb_figure_lacks ((LbFigureId) id, (LbFact) fact, &world.pile) << fact;
    g_assert_true (lacks_any == (lb_figure_missing ((LbFigureId) id, &world.pile) != NULL));
    g_assert_true (lacks_any == (isnan (plan.figures[id].range.likely) != 0));
  }
  g_assert_cmphex (lb_pile_lacks (&world.pile), ==, all);
}

/* What else the pile may be by a fact that nobody has said; FALSE when that is all. */
static gboolean
suppose (LbPile *pile, LbFact fact, guint i)
{
  static const double batters[] = { 0, 1.0 / 12, 1.0 / 6, 1.0 / 3 };
  static const char *const bars[] = { "#8", "#9", "#10", "#11" };

  if (fact == LB_FACT_SHAPE)
    pile->outline.shape = (LbShape) MIN (i, LB_N_SHAPES - 1);
  else if (fact == LB_FACT_BATTER)
    pile->batter = batters[MIN (i, G_N_ELEMENTS (batters) - 1)];
  else
    pile->bar = lb_bar_find (bars[MIN (i, G_N_ELEMENTS (bars) - 1)]);
  return i < (fact == LB_FACT_SHAPE ? LB_N_SHAPES : G_N_ELEMENTS (batters));
}

static void
forget (LbPile *pile, LbFact fact)
{
  if (fact == LB_FACT_BAR) {
    pile->bar = NULL;
    return;
  }
  suppose (pile, fact, 0);
  pile->unsaid = 1u << fact;
}

/* A figure that does without a fact spans what it is for all that the fact may be; one that asks for it
 * is not known; the others stay. */
static void
test_widens (void)
{
  static const LbFact facts[] = { LB_FACT_SHAPE, LB_FACT_BATTER, LB_FACT_BAR };
  static const WorldKind kinds[] = { WORLD_PLAIN, WORLD_MUDLINE, WORLD_HOLLOW, WORLD_LEARNED,
                                     WORLD_WEAK };
  guint n_wider = 0;

  for (gsize at = 0; at < G_N_ELEMENTS (facts) * G_N_ELEMENTS (kinds); at++) {
    const LbFact fact = facts[at % G_N_ELEMENTS (facts)];
    World world = world_of (kinds[at / G_N_ELEMENTS (facts)]), known = world;
    LbCutPlan plan, of_known;

    forget (&world.pile, fact);
    reckon (&world, &plan);
    g_assert_cmphex (lb_pile_lacks (&world.pile), ==, 1u << fact);
    for (guint i = 0; suppose (&known.pile, fact, i); i++) {
      reckon (&known, &of_known);
      for (LbFigureId id = 0; id < LB_N_FIGURES; id++) {
        const LbRange *span = &plan.figures[id].range, *one = &of_known.figures[id].range;
        const double hair = 1e-9 * fabs (one->high);

        g_test_message ("%s, %s %u", lb_figure_key (id), lb_fact_name (fact), i);
        if (lb_figure_lacks (id, fact, &world.pile)) {
          g_assert_true (isnan (span->likely));
        } else if (lb_figure_widens (id, fact, &world.pile)) {
          g_assert_cmpfloat (span->low, <=, one->low + hair);
          g_assert_cmpfloat (span->high, >=, one->high - hair);
          g_assert_true (plan.figures[id].tag == LB_TAG_COMMON_PRACTICE ||
                         plan.figures[id].tag == LB_TAG_MEMORY);
          n_wider += span->high - span->low > one->high - one->low + hair ? 1 : 0;
        } else {
          g_assert_false (differs (span->low, one->low) || differs (span->high, one->high));
        }
      }
    }
  }
  g_assert_cmpuint (n_wider, >, 100);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/figure-basis/true", test_true);
  g_test_add_func ("/trade/figure-basis/widens", test_widens);
  g_test_add_func ("/trade/figure-basis/figures-as-inputs", test_figures_as_inputs);
  g_test_add_func ("/trade/figure-basis/in-play", test_in_play);
  g_test_add_func ("/trade/figure-basis/words", test_words);
  g_test_add_func ("/trade/figure-basis/lacks", test_lacks);
  return g_test_run ();
}
