/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shifts sent from one job file and joined in a copy of it, from the shell. */
#include "shell.h"

#include <string.h>

/* A job of two piles, and a copy of it in which another crew works. */
static void
make_jobs (void)
{
  shell_write ("piles.csv", "mark,x,y,shape,width,bar,bars\nA1,0,0,octagonal,16,#8,8\n"
                            "A2,0,9,octagonal,16,#8,8\n");
  shell_tool_ends (0, "new here");
  shell_tool_ends (0, "take-piles here piles.csv");

  g_autoptr (GBytes) job = shell_bytes ("here");
  g_autofree char *copy = shell_path ("there");
  g_assert_true (g_file_set_contents (copy, g_bytes_get_data (job, NULL),
                                      (gssize) g_bytes_get_size (job), NULL));
}

static void
test_sent_and_joined (void)
{
  g_auto (Said) sent = { 0 }, looked = { 0 }, joined = { 0 }, again = { 0 }, found = { 0 };

  make_jobs ();
  shell_tool_ends (0, "record there step A1 cleaned --day 2026-07-14");
  shell_tool_ends (0, "record there step A2 cleaned --day 2026-07-15 --watch night");
  shell_tool_ends (0, "record here fact A1 bent 7 --who=DS");
  shell_tool_ends (0, "record there fact A1 bent 8");

  shell_tool (&sent, 0, "packet there night.lastpack --shift 2026-07-15/night --who \"crew 2\"");
  shell_assert_says (sent.out, "1 shift is in");

  g_autoptr (GBytes) before = shell_bytes ("here");
  shell_tool (&looked, 0, "join here night.lastpack --look");
  g_autoptr (GBytes) after = shell_bytes ("here");
  g_assert_true (g_bytes_equal (before, after));
  shell_assert_says (looked.out, "Sent by crew 2");
  shell_assert_says (looked.out, "New: 1 shift, 1 entry, 1 fact or setting.");
  shell_assert_says (looked.out, "Wed 15 Jul 2026, night: 1 entry");
  shell_assert_says (looked.out, "“Bent set to 7” (DS)");

  shell_tool (&joined, 0, "join here night.lastpack --json");
  g_autoptr (JsonNode) root = shell_parse_json (joined.out);
  JsonObject *object = json_node_get_object (root);
  g_assert_true (json_object_get_boolean_member (object, "is_joined"));
  g_assert_cmpint (json_object_get_int_member (object, "new_entries"), ==, 1);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "shifts")), ==, 1);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "findings")), ==,
                    1);

  shell_tool (&again, 0, "join here night.lastpack");
  shell_assert_says (again.out, "Nothing in it is new.");
  shell_tool (&found, 0, "findings here --open");
  shell_assert_says (found.out, "said-otherwise:");
  /* The copy itself brings what the packet left out. */
  shell_tool_ends (0, "join here there");
  shell_tool_ends (0, "check here");
  shell_tool_ends (0, "record here fact A1 bent 7");
  g_auto (Said) decided = { 0 };
  shell_tool (&decided, 0, "findings here --open");
  g_assert_null (strstr (decided.out, "said-otherwise:"));
}

static void
test_refused (void)
{
  g_auto (Said) other = { 0 }, not_one = { 0 }, no_shift = { 0 };

  shell_write ("list.csv", "mark,x,y\nA1,0,0\n");
  shell_tool_ends (0, "new alone");
  shell_tool_ends (0, "new quay --name \"Quay 9\"");
  shell_tool (&other, 1, "join alone quay");
  shell_assert_says (other.err, "Quay 9");
  shell_tool (&not_one, 1, "join alone list.csv");
  shell_assert_says (not_one.err, "neither a packet nor a job file");
  shell_tool (&no_shift, 1, "packet alone p.lastpack --shift 2026-07-14");
  shell_assert_says (no_shift.err, "no shift on these days");
  shell_tool_ends (2, "packet alone p.lastpack");
  shell_tool_ends (2, "packet alone p.lastpack --all --shift 2026-07-14");
  shell_tool_ends (2, "packet alone p.lastpack --shift 2026-07-14/noon");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  shell_set_up ();
  g_test_add_func ("/packet/sent-and-joined", test_sent_and_joined);
  g_test_add_func ("/packet/refused", test_refused);

  const int status = g_test_run ();

  shell_tear_down ();
  return status;
}
