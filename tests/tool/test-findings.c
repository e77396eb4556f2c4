/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Findings listed, answered, and taken back, from the shell. */
#include "shell.h"

#include <string.h>

/* A job of one pile that was pulled and never cut. */
static void
make_job (const char *name)
{
  g_autofree char *made = g_strconcat ("new ", name, NULL);
  g_autofree char *taken = g_strconcat ("take-piles ", name, " piles.csv", NULL);
  g_autofree char *pulled = g_strconcat ("record ", name, " step A1 pulled --day 2026-07-14", NULL);

  shell_write ("piles.csv", "mark,x,y,shape,width,bar,bars\nA1,0,0,octagonal,16,#8,8\n");
  shell_tool_ends (0, made);
  shell_tool_ends (0, taken);
  shell_tool_ends (0, pulled);
}

/* The member of the only finding. */
static char *
member (const char *job, const char *name)
{
  g_autofree char *line = g_strconcat ("findings ", job, " --json", NULL);
  g_auto (Said) said = { 0 };

  shell_tool (&said, 0, line);

  g_autoptr (JsonNode) root = shell_parse_json (said.out);
  JsonArray *findings = json_node_get_array (root);

  g_assert_cmpuint (json_array_get_length (findings), ==, 1);
  return g_strdup (json_object_get_string_member_with_default (
    json_array_get_object_element (findings, 0), name, NULL));
}

static void
assert_member (const char *job, const char *name, const char *expected)
{
  g_autofree char *value = member (job, name);

  g_assert_cmpstr (value, ==, expected);
}

static void
test_answered (void)
{
  g_auto (Said) listed = { 0 }, answered = { 0 }, later = { 0 };

  make_job ("job");
  g_autofree char *key = member ("job", "key");
  g_autofree char *answer = g_strdup_printf ("answer job %s \"it broke in the sling\" --by=DS",
                                             key);
  g_autofree char *take_back = g_strdup_printf ("answer job %s --take-back", key);

  assert_member ("job", "kind", "pulled-uncut");
  assert_member ("job", "day", "2026-07-14");
  assert_member ("job", "watch", "day");
  assert_member ("job", "pile", "A1");
  assert_member ("job", "answer", NULL);
  shell_tool (&listed, 0, "findings job");
  shell_assert_says (listed.out, "A1 was pulled, but neither severed nor drawn whole.");
  shell_assert_says (listed.out, "Record how it came out.");
  shell_assert_says (listed.out, key);

  shell_tool_ends (0, answer);
  assert_member ("job", "answer", "it broke in the sling");
  shell_tool (&answered, 0, "findings job --day=2026-07-14");
  shell_assert_says (answered.out, "Answered by DS: it broke in the sling");
  g_assert_null (strstr (answered.out, "Record how it came out."));
  shell_tool (&later, 0, "findings job --day=2026-07-15");
  g_assert_cmpstr (later.out, ==, "Nothing was found.\n");
  g_auto (Said) open = { 0 };
  shell_tool (&open, 0, "findings job --open");
  g_assert_cmpstr (open.out, ==, "Nothing was found.\n");

  shell_tool_ends (0, take_back);
  assert_member ("job", "answer", NULL);
  shell_tool_ends (1, take_back); /* not twice */
}

static void
test_refused (void)
{
  g_auto (Said) said = { 0 };

  make_job ("other");
  shell_tool (&said, 1, "answer other no-such:key \"why\"");
  shell_assert_says (said.err, "“no-such:key”");
  shell_tool_ends (2, "answer other no-such:key");
  shell_tool_ends (2, "answer other no-such:key why --take-back");
  shell_tool_ends (2, "findings other --day=yesterday");

  g_autofree char *key = member ("other", "key");
  g_autofree char *empty = g_strdup_printf ("answer other %s \" \"", key);
  shell_tool_ends (1, empty);
  assert_member ("other", "answer", NULL);
}

/* In a signed shift an answer stands beside the signed record, and changes nothing of it. */
static void
test_signed (void)
{
  g_auto (Said) checked = { 0 };

  make_job ("sealed");
  g_autofree char *key = member ("sealed", "key");
  g_autofree char *answer = g_strdup_printf ("answer sealed %s \"it broke in the sling\"", key);

  shell_tool_ends (0, "sign sealed 2026-07-14 --by=DS");
  shell_tool_ends (0, answer);
  assert_member ("sealed", "answer", "it broke in the sling");
  shell_tool (&checked, 0, "check sealed");
  shell_assert_says (checked.out, "every row is as it was signed");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();
  g_test_add_func ("/tool/findings/answered", test_answered);
  g_test_add_func ("/tool/findings/refused", test_refused);
  g_test_add_func ("/tool/findings/signed", test_signed);

  const int failed = g_test_run ();
  shell_tear_down ();
  return failed;
}
