/* SPDX-License-Identifier: MIT */
#include "sy-chain.h"

#include <openssl/evp.h>
#include <string.h>

/* Keeps the hash of a journal line apart from every other use of SHA-256. Its length never varies. */
#define CHAIN_TAG "steelyard journal line 1"

void
sy_hash_of (gconstpointer data, gsize size, SyHash *out)
{
  /* Fails only when libcrypto has no SHA-256 or no memory: nothing can be recorded then. */
  if (EVP_Digest (data, size, out->bytes, NULL, EVP_sha256 (), NULL) != 1)
    g_error ("libcrypto cannot work out SHA-256");
}

#define LINE_BYTES (sizeof CHAIN_TAG - 1 + SY_HASH_BYTES + sizeof (guint64) + SY_HASH_BYTES)

/* What the hash of a line is taken over. */
static void
put_line (guint8 *line, const SyHash *previous, guint64 number, const SyHash *event_hash)
{
  const gsize tag = sizeof CHAIN_TAG - 1;
  const guint64 big_endian = GUINT64_TO_BE (number);

  memcpy (line, CHAIN_TAG, tag);
  memcpy (line + tag, previous->bytes, SY_HASH_BYTES);
  memcpy (line + tag + SY_HASH_BYTES, &big_endian, sizeof big_endian);
  memcpy (line + tag + SY_HASH_BYTES + sizeof big_endian, event_hash->bytes, SY_HASH_BYTES);
}

void
sy_chain_link (const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out)
{
  guint8 line[LINE_BYTES];

  put_line (line, previous, number, event_hash);
  sy_hash_of (line, sizeof line, out);
}

struct SyHasher
{
  EVP_MD *algorithm;
  EVP_MD_CTX *context;
};

SyHasher *
sy_hasher_new (void)
{
  SyHasher *hasher = g_new0 (SyHasher, 1);

  hasher->algorithm = EVP_MD_fetch (NULL, "SHA256", NULL);
  hasher->context = EVP_MD_CTX_new ();
  if (hasher->algorithm == NULL || hasher->context == NULL)
    g_error ("libcrypto cannot work out SHA-256");
  return hasher;
}

void
sy_hasher_free (SyHasher *hasher)
{
  if (hasher == NULL)
    return;
  EVP_MD_CTX_free (hasher->context);
  EVP_MD_free (hasher->algorithm);
  g_free (hasher);
}

void
sy_hasher_run (SyHasher *hasher, gconstpointer data, gsize size, SyHash *out)
{
  if (EVP_DigestInit_ex (hasher->context, hasher->algorithm, NULL) != 1
      || EVP_DigestUpdate (hasher->context, data, size) != 1 || EVP_DigestFinal_ex (hasher->context, out->bytes, NULL) != 1)
    g_error ("libcrypto cannot work out SHA-256");
}

void
sy_hasher_link (SyHasher *hasher, const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out)
{
  guint8 line[LINE_BYTES];

  put_line (line, previous, number, event_hash);
  sy_hasher_run (hasher, line, sizeof line, out);
}

void
sy_chain_next (const SyHash *previous, guint64 number, GBytes *event, SyHash *out)
{
  SyHash content;
  gsize size;
  gconstpointer data = g_bytes_get_data (event, &size);

  sy_hash_of (data, size, &content);
  sy_chain_link (previous, number, &content, out);
}

char *
sy_hash_text (const SyHash *hash)
{
  GString *text = g_string_sized_new (2 * SY_HASH_BYTES);

  for (int i = 0; i < SY_HASH_BYTES; i++)
    g_string_append_printf (text, "%02x", hash->bytes[i]);
  return g_string_free (text, FALSE);
}

gboolean
sy_hash_from_text (const char *text, SyHash *out)
{
  SyHash hash;

  if (strlen (text) != 2 * SY_HASH_BYTES)
    return FALSE;
  for (int i = 0; i < SY_HASH_BYTES; i++)
    {
      int high = g_ascii_xdigit_value (text[2 * i]);
      int low = g_ascii_xdigit_value (text[2 * i + 1]);

      if (high < 0 || low < 0)
        return FALSE;
      hash.bytes[i] = (guint8) (high << 4 | low);
    }
  *out = hash;
  return TRUE;
}
