/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/bar.h"

#include <math.h>

static void
test_every_name_finds_its_row (void)
{
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  g_assert_cmpuint (n, >, 30);
  for (gsize i = 0; i < n; i++) {
    g_autofree char *padded = g_strdup_printf ("  %s ", bars[i].name);

    g_assert_true (lb_bar_find (padded) == &bars[i]);
  }
}

static void
test_sizes_rise (void)
{
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  for (gsize i = 1; i < n; i++) {
    g_assert_cmpint (bars[i].kind, >=, bars[i - 1].kind);
    if (bars[i].kind == bars[i - 1].kind)
      g_assert_cmpfloat (bars[i].diameter_m, >=, bars[i - 1].diameter_m);
  }
}

/* Mass and area of each row tell the same steel, 7850 kg/m3; strand is listed a little heavy. */
static void
test_density_is_that_of_steel (void)
{
  gsize n;
  const LbBar *bars = lb_bar_table (&n);

  for (gsize i = 0; i < n; i++) {
    g_assert_cmpfloat_with_epsilon (bars[i].mass_kg_per_m / bars[i].area_m2, 7850, 7850 * 0.02);
    g_assert_true ((bars[i].break_force_n > 0) == (bars[i].kind == LB_BAR_STRAND));
    /* Stress at the breaking force: the grade, ksi, to what rounding of the area leaves. */
    if (bars[i].kind == LB_BAR_STRAND)
      g_assert_cmpfloat_with_epsilon (bars[i].break_force_n / bars[i].area_m2 / 6894757.0,
                                      g_str_has_suffix (bars[i].name, "270") ? 270 : 250, 2);
  }
}

static void
test_loose_names (void)
{
  const struct
  {
    const char *text, *name;
  } cases[] = {
    { "8", "#8" },
    { "# 8", "#8" },
    { "no 8", "#8" },
    { "No. 11", "#11" },
    { "#18 bars", "#18" },
    { "1-1/4 sq", "1-1/4 in sq" },
    { "1 1/4 in. sq", "1-1/4 in sq" },
    { "1.25 in square", "1-1/4 in sq" },
    { "1,25 IN SQUARE BAR", "1-1/4 in sq" },
    { "1\" sq", "1 in sq" },
    { "0.5 strand 270", "1/2 in strand 270" },
    { "5/16 in strand grade 250", "5/16 in strand 250" },
    { "0.438\" strand 270 ksi", "7/16 in strand 270" },
    { ".6 in strand 250k", "0.6 in strand 250" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LbBar *bar = lb_bar_find (cases[i].text);

    g_assert_nonnull (bar);
    g_assert_cmpstr (bar->name, ==, cases[i].name);
  }
}

static void
test_refused (void)
{
  const char *const texts[] = { "",
                                "25M",
                                "#25 metric",
                                "#12",
                                "8.5",
                                "1 in",
                                "1/2 strand",
                                "sq",
                                "3 in sq",
                                "#",
                                "#8 #9",
                                "1/0 in sq",
                                "1/2 in strand 300",
                                "\xff\xfe" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_null (lb_bar_find (texts[i]));
}

static void
test_any_text_is_survived (void)
{
  const char pieces[] = "#8no.1-/4 insqstrand270,\"\xe2\x80\xb3";

  for (int i = 0; i < 20000; i++) {
    char text[24];
    const int length = g_test_rand_int_range (0, (int) sizeof text - 1);

    for (int c = 0; c < length; c++)
      text[c] = pieces[g_test_rand_int_range (0, (int) sizeof pieces - 1)];
    text[length] = '\0';

    const LbBar *bar = lb_bar_find (text);

    g_assert_true (!bar || lb_bar_find (bar->name) == bar);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/bar/names", test_every_name_finds_its_row);
  g_test_add_func ("/trade/bar/sizes-rise", test_sizes_rise);
  g_test_add_func ("/trade/bar/density", test_density_is_that_of_steel);
  g_test_add_func ("/trade/bar/loose-names", test_loose_names);
  g_test_add_func ("/trade/bar/refused", test_refused);
  g_test_add_func ("/trade/bar/any-text", test_any_text_is_survived);
  return g_test_run ();
}
