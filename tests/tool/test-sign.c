/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Signing from the shell, and the seals proved by another hand's reading of docs/file-format.md
 * (check-seals.py: Python's own SQLite, SHA-256 and IEEE 754). */
#include "shell.h"

#include <string.h>

static void
prove (const char *job, const char *says)
{
  g_autofree char *script = g_build_filename (g_getenv ("LB_SOURCE_DIR"), "tests", "tool",
                                              "check-seals.py", NULL);
  g_auto (Said) said = { 0 };

  shell_run (&said, "python3", script, job, NULL);
  g_assert_cmpstr (said.err, ==, "");
  g_assert_cmpint (said.status, ==, 0);
  g_assert_cmpstr (said.out, ==, says);
}

/* The demo with each of its days signed, but for those signed already. */
static void
test_every_day (void)
{
  g_auto (Said) days = { 0 };
  guint n_days = 0;

  shell_make_demo ();
  shell_tool (&days, 0, "totals demo --csv");

  g_auto (GStrv) lines = g_strsplit (days.out, "\n", -1);
  for (guint i = 1; lines[i] != NULL && g_ascii_isdigit (lines[i][0]); i++) {
    g_autofree char *day = g_strndup (lines[i], 10);
    g_autofree char *line = g_strdup_printf ("sign demo %s --by superintendent", day);
    g_auto (Said) said = { 0 };

    shell_tool (&said, 0, line);
    shell_assert_says (said.out, "Signed by superintendent");
    shell_tool_ends (1, line); /* not twice */
    n_days++;
  }
  g_assert_cmpuint (n_days, ==, 30);

  g_auto (Said) checked = { 0 };
  shell_tool (&checked, 0, "check demo");
  shell_assert_says (checked.out, "30 shifts are signed, every row is as it was signed.");
  shell_assert_says (checked.out, "under none yet: 0.");
  prove ("demo", "30 seals hold\n");
}

/* The paper has the whole seal, which “check” prints too. */
static void
test_on_paper (void)
{
  g_autofree char *pdftotext = g_find_program_in_path ("pdftotext");
  g_auto (Said) signed_day = { 0 }, text = { 0 }, draft = { 0 };

  if (pdftotext == NULL) {
    g_test_fail_printf ("pdftotext is missing: sh src/set-up test");
    return;
  }
  shell_tool_ends (0, "demo paper");
  shell_tool_ends (0, "record paper hours 06:00 16:30 --day 2026-06-09");
  shell_tool_ends (0, "record paper crew 'diving supervisor' DS --day 2026-06-09");
  shell_tool (&signed_day, 0, "sign paper 2026-06-09 --by superintendent");
  shell_tool_ends (0, "print paper day 2026-06-09 signed.pdf");
  shell_run (&text, pdftotext, "-layout", "signed.pdf", "-", NULL);

  g_auto (GStrv) lines = g_strsplit (signed_day.out, "\n", -1);
  g_assert_cmpuint (strlen (lines[1]), ==, 64);
  shell_assert_says (text.out, lines[1]);
  shell_assert_says (text.out, "Signed by superintendent, ");
  shell_assert_says (text.out, ", 06:00–16:30 · ");
  shell_assert_says (text.out, "· Diving supervisor: DS");

  shell_tool_ends (0, "print paper day 2026-06-10 draft.pdf");
  shell_run (&draft, pdftotext, "-layout", "draft.pdf", "-", NULL);
  shell_assert_says (draft.out, "Not signed: this is a draft.");
}

/* A signed shift takes nothing but corrections, which stand on its paper. */
static void
test_correct (void)
{
  g_auto (Said) said = { 0 };

  shell_tool_ends (0, "demo late");
  shell_tool_ends (0, "sign late 2026-06-11 --by superintendent");
  shell_tool (&said, 1, "record late rods 4 --day 2026-06-11");
  shell_assert_says (said.err, "This shift is signed");
  shell_tool_ends (0, "record late rods 4 --day 2026-06-11 --correct 'a box was forgotten'");
  shell_tool_ends (1, "record late take-back --day 2026-06-11");
  shell_tool_ends (0, "record late take-back --day 2026-06-11 --correct 'it was not'");
  /* The next one is of before the signature, not the signature. */
  shell_tool_ends (0, "record late take-back --day 2026-06-11 --correct 'nor that'");
  shell_tool_ends (0, "record late redo --day 2026-06-11 --correct 'it was'");
  shell_tool_ends (0, "check late");
  prove ("late", "1 seals hold\n");
}

static void
test_refused (void)
{
  g_auto (Said) said = { 0 };

  shell_make_demo ();
  shell_tool_ends (2, "sign demo 2026-06-08");
  shell_tool (&said, 1, "sign demo 2019-06-08 --by DS");
  shell_assert_says (said.err, "The job has no shift on 2019-06-08 with the watch “day”");
  shell_tool_ends (1, "sign demo 2026-06-08 --watch=night --by DS");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();
  g_test_add_func ("/tool/sign/every-day", test_every_day);
  g_test_add_func ("/tool/sign/on-paper", test_on_paper);
  g_test_add_func ("/tool/sign/correct", test_correct);
  g_test_add_func ("/tool/sign/refused", test_refused);

  const int failed = g_test_run ();
  shell_tear_down ();
  return failed;
}
