/* SPDX-License-Identifier: MIT */
#ifndef SY_CHAIN_H
#define SY_CHAIN_H

#include <glib.h>

/* Topics: hashes, and how the lines of the journal are chained by them */

#define SY_HASH_BYTES 32
typedef struct
{
  guint8 bytes[SY_HASH_BYTES];
} SyHash;

/**
 * sy_chain_next:
 * Hash of journal line @number: SHA-256 over a domain tag, the previous hash (zeros before line 1), the number
 * (8 bytes, big-endian) and the SHA-256 of the event's canonical bytes.
 */
void sy_chain_next (const SyHash *previous, guint64 number, GBytes *event, SyHash *out);
/* The same where only the SHA-256 of the event's bytes is known. */
void sy_chain_link (const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out);
void sy_hash_of (gconstpointer data, gsize size, SyHash *out); /* plain SHA-256 (libcrypto) */

/* The same two for many lines in a row, without asking libcrypto for its algorithm each time. One thread. */
typedef struct SyHasher SyHasher;
SyHasher *sy_hasher_new (void);
void sy_hasher_free (SyHasher *hasher); /* NULL is fine */
void sy_hasher_run (SyHasher *hasher, gconstpointer data, gsize size, SyHash *out);
void sy_hasher_link (SyHasher *hasher, const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out);

char *sy_hash_text (const SyHash *hash);                       /* 64 hex digits, new string */
gboolean sy_hash_from_text (const char *text, SyHash *out);    /* FALSE, @out as it was, for anything else; takes capitals */

#endif
