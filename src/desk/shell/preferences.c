/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/preferences.h"

GSettings *
lb_preferences (void)
{
  static GSettings *preferences;
  static gsize is_looked_up;

  if (g_once_init_enter (&is_looked_up)) {
    GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
    g_autoptr (GSettingsSchema) schema =
      source != NULL ? g_settings_schema_source_lookup (source, LB_APP_ID, TRUE) : NULL;

    if (schema != NULL)
      preferences = g_settings_new_full (schema, NULL, NULL);
    g_once_init_leave (&is_looked_up, 1);
  }
  return preferences;
}
