/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/text-pool.h"

#include "book/large-room.h"

#include <string.h>

/* Each block is so many times as large as the one before, up to the most. */
#define BLOCK_LEAST  ((gsize) 1024)
#define BLOCK_GROWTH 16
#define BLOCK_MOST   ((gsize) 4 * 1024 * 1024)

struct _LbTextPool
{
  GPtrArray *blocks;
  GHashTable *once; /* texts of the pool, NULL before the first that may come again */
  char *next;
  gsize n_left; /* bytes from @next on */
  gsize block_size;
};

LbTextPool *
lb_text_pool_new (void)
{
  LbTextPool *pool = g_new0 (LbTextPool, 1);

  pool->blocks = g_ptr_array_new_with_free_func (lb_large_room_free);
  pool->block_size = BLOCK_LEAST;
  return pool;
}

void
lb_text_pool_free (LbTextPool *pool)
{
  if (pool == NULL)
    return;
  g_clear_pointer (&pool->once, g_hash_table_unref);
  g_ptr_array_unref (pool->blocks);
  g_free (pool);
}

/* What is left of the block before is given up. */
static void
add_block (LbTextPool *pool, gsize least)
{
  const gsize size = MAX (pool->block_size, least);

  pool->next = lb_large_room_new (size);
  pool->n_left = size;
  pool->block_size = MIN (pool->block_size * BLOCK_GROWTH, BLOCK_MOST);
  g_ptr_array_add (pool->blocks, pool->next);
}

const char *
lb_text_pool_add_bytes (LbTextPool *pool, const char *text, gsize n)
{
  const gsize size = n + 1;

  if (size > pool->n_left)
    add_block (pool, size);

  char *copy = memcpy (pool->next, text, n);
  copy[n] = '\0';
  pool->next += size;
  pool->n_left -= size;
  return copy;
}

const char *
lb_text_pool_add (LbTextPool *pool, const char *text)
{
  return lb_text_pool_add_bytes (pool, text, strlen (text));
}

const char *
lb_text_pool_add_once (LbTextPool *pool, const char *text)
{
  if (pool->once == NULL)
    pool->once = g_hash_table_new (g_str_hash, g_str_equal);

  const char *kept = g_hash_table_lookup (pool->once, text);
  if (kept == NULL) {
    kept = lb_text_pool_add (pool, text);
    g_hash_table_add (pool->once, (gpointer) kept);
  }
  return kept;
}
