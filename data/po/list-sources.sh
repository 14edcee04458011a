#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# list-sources.sh: writes POTFILES anew, every source that has words for people.
set -eu
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
{
  grep -rlP --include='*.[ch]' '(?<!\w)(?:_|N_|C_|P_) ?\(\s*"' core ui app
  grep -rlPz --include='*.[ch]' '(?<!\w)(?:_|N_|C_|P_) ?\(\s*"' core ui app | tr -d '\0'
  find data -name '*.ui'
} | LC_ALL=C sort -u >data/po/POTFILES
