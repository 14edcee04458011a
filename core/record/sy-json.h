/* SPDX-License-Identifier: MIT */
#ifndef SY_JSON_H
#define SY_JSON_H

#include "sy-memory.h"
#include "sy-problem.h"

/* Topics: strict scanner, exact writer */

#define SY_JSON_DEPTH_MAX 32
#define SY_JSON_DOCUMENT_MAX (16u * 1024u * 1024u)
#define SY_JSON_LINE_MAX (1024u * 1024u)

typedef enum
{
  SY_JSON_NULL,
  SY_JSON_FALSE,
  SY_JSON_TRUE,
  SY_JSON_NUMBER,
  SY_JSON_TEXT,
  SY_JSON_ARRAY,
  SY_JSON_OBJECT,
} SyJsonType;

typedef struct SyJson
{
  SyJsonType type;
  int line;              /* from 1                                                     */
  const char *key;       /* of a member of an object, else NULL; NUL-terminated        */
  const char *raw;       /* as written: points into the scanned text                   */
  size_t raw_length;
  const char *text;      /* SY_JSON_TEXT: unescaped, NUL-terminated (no NUL inside)    */
  size_t text_length;
  double number;         /* SY_JSON_NUMBER: finite                                     */
  struct SyJson *first;  /* children in order                                          */
  struct SyJson *next;
  size_t n_children;
} SyJson;

/**
 * sy_json_scan:
 * Exactly one JSON document (RFC 8259), and stricter: valid UTF-8, no duplicate keys, no U+0000, depth at most
 * 32, finite numbers, at most @max bytes.
 * Parameters:   text, length  must outlive the tree.
 *               problems      receives what is wrong with line and path; problems found before a syntax
 *                             error (duplicate keys) are kept. Not NULL; not cleared.
 * Return value: the root in @memory, or NULL when there is a problem.
 */
const SyJson *sy_json_scan (const char *text, size_t length, size_t max, SyMemory *memory,
                            SyProblems *problems);

/* The same, but a document whose only problem is a key given twice still yields its tree (with both), so that what
   else is wrong can be listed; the caller must look at the report. */
const SyJson *sy_json_scan_on (const char *text, size_t length, size_t max, SyMemory *memory,
                               SyProblems *problems);

/* Member of an object by key, NULL when absent or not an object. */
const SyJson *sy_json_member (const SyJson *object, const char *key);
/* Convenience on a member: text or NULL; number or fallback. */
const char *sy_json_member_text (const SyJson *object, const char *key);
double sy_json_member_number (const SyJson *object, const char *key, double fallback);

/* Writer: appends to a string. Text is escaped; numbers read back to the same bits; not finite: null. */
void sy_json_write_text (GString *out, const char *text);
void sy_json_write_number (GString *out, double value);
/* A tree as compact JSON with numbers as written: what canonical bytes are made of. */
void sy_json_write_tree (GString *out, const SyJson *tree);

#endif
