/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <errno.h>
#include <math.h>
#include <string.h>

typedef enum {
  FORMAT_PNG,
  FORMAT_SVG,
  FORMAT_PDF,
} Format;

/* PNG pixels a point: sharp on a dense screen and on paper. */
static const double PNG_SCALE = 2;

static gboolean
format_from_path (const char *path, Format *out_format, GError **error)
{
  static const char *const endings[] = {
    [FORMAT_PNG] = ".png",
    [FORMAT_SVG] = ".svg",
    [FORMAT_PDF] = ".pdf",
  };
  g_autofree char *lower = g_ascii_strdown (path, -1);
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++) {
    if (g_str_has_suffix (lower, endings[i])) {
      *out_format = (Format) i;
      return TRUE;
    }
  }
  g_set_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_FORMAT,
               "Cannot tell the kind of picture from “%s”: name it .png, .svg or .pdf", path);
  return FALSE;
}

static cairo_status_t
append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
create_surface (Format format, double width, double height, const char *title, GByteArray *bytes)
{
  cairo_surface_t *surface = NULL;
  switch (format) {
  case FORMAT_PNG:
    surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) ceil (width * PNG_SCALE),
                                          (int) ceil (height * PNG_SCALE));
    cairo_surface_set_device_scale (surface, PNG_SCALE, PNG_SCALE);
    break;
  case FORMAT_SVG:
    surface = cairo_svg_surface_create_for_stream (append_cb, bytes, width, height);
    break;
  case FORMAT_PDF:
    surface = cairo_pdf_surface_create_for_stream (append_cb, bytes, width, height);
    /* cairo would write the time of day, and the same picture would differ from run to run. It
     * cannot be told to leave the date out, so every file gets the same neutral one. */
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE,
                                    "1970-01-01T00:00:00Z");
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Lastbent " LB_VERSION);
    if (title != NULL)
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
    break;
  default:
    g_assert_not_reached ();
  }
  return surface;
}

/* cairo keeps the first error and draws no more, so one look at the end is enough. */
static cairo_status_t
draw_pages (cairo_surface_t *surface,
            Format format,
            double width,
            double height,
            gsize n_pages,
            LbPictureFunc func,
            gpointer data,
            GByteArray *bytes)
{
  cairo_t *const cr = cairo_create (surface);
  for (gsize page = 0; page < n_pages; page++) {
    func (cr, page, width, height, data);
    if (format == FORMAT_PDF)
      cairo_show_page (cr);
  }
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS && format == FORMAT_PNG)
    status = cairo_surface_write_to_png_stream (surface, append_cb, bytes);
  cairo_surface_finish (surface);
  return status != CAIRO_STATUS_SUCCESS ? status : cairo_surface_status (surface);
}

static gboolean
renumber_cb (const GMatchInfo *match, GString *out, gpointer data)
{
  GHashTable *const numbers = data;
  g_autofree char *name = g_match_info_fetch (match, 0);
  gpointer number = g_hash_table_lookup (numbers, name);
  if (number == NULL) {
    number = GUINT_TO_POINTER (g_hash_table_size (numbers) + 1);
    g_hash_table_insert (numbers, g_strdup (name), number);
  }
  g_string_append_printf (out, "part%u", GPOINTER_TO_UINT (number));
  return FALSE;
}

/* cairo names the parts of an SVG by how many surfaces the program made before, so the second
 * picture would differ from the first. They are named here by the order they come in. Text is
 * glyphs by then: no word of the picture can look like such a name. */
static gboolean
renumber_parts (GByteArray *bytes, GError **error)
{
  g_autoptr (GRegex) names = g_regex_new ("(?<=\"|#)(?:surface|image)[0-9]+(?=[\")])", 0, 0, error);
  if (names == NULL)
    return FALSE;
  g_autoptr (GHashTable) numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *text = g_regex_replace_eval (names, (const char *) bytes->data, bytes->len, 0, 0,
                                                renumber_cb, numbers, error);
  if (text == NULL)
    return FALSE;
  g_byte_array_set_size (bytes, 0);
  g_byte_array_append (bytes, (const guint8 *) text, (guint) strlen (text));
  return TRUE;
}

gboolean
lb_picture_write (const char *path,
                  double width,
                  double height,
                  gsize n_pages,
                  const char *title,
                  LbPictureFunc func,
                  gpointer data,
                  GError **error)
{
  g_return_val_if_fail (path != NULL && func != NULL && n_pages > 0, FALSE);

  Format format;
  if (!format_from_path (path, &format, error))
    return FALSE;
  if (n_pages > 1 && format != FORMAT_PDF) {
    g_set_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_FORMAT,
                 "“%s” would need %" G_GSIZE_FORMAT " pages: only a .pdf has more than one", path,
                 n_pages);
    return FALSE;
  }

  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *const surface = create_surface (format, width, height, title, bytes);
  const cairo_status_t status = draw_pages (surface, format, width, height, n_pages, func, data,
                                            bytes);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS) {
    g_set_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_WRITE, "Cannot draw “%s”: %s", path,
                 cairo_status_to_string (status));
    return FALSE;
  }

  g_autoptr (GError) cause = NULL;
  if ((format == FORMAT_SVG && !renumber_parts (bytes, &cause)) ||
      !g_file_set_contents_full (path, (const char *) bytes->data, bytes->len,
                                 G_FILE_SET_CONTENTS_CONSISTENT, 0666, &cause))
  {
    g_set_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_WRITE, "Cannot write “%s”: %s", path,
                 cause->message);
    return FALSE;
  }
  return TRUE;
}
