#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# build-demo.sh STEELYARD-CLI STORE
# Makes the store of the demo workshop, an invented press and roll-forming shop, from the facts in
# this folder: every line of workshop.tsv is one revision, recorded as on the day it names. The
# store must not exist yet.
set -eu

[ $# -eq 2 ] || { echo "usage: build-demo.sh STEELYARD-CLI STORE" >&2; exit 2; }
cli=$1 store=$2
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
[ ! -e "$store" ] || { echo "$store is there already" >&2; exit 1; }

# Made beside its place and moved there when it is whole.
new="$store.new"
rm -f "$new" "$new-wal" "$new-shm"
while IFS=$'\t' read -r when by task facts why; do
  case $when in '#'* | '') continue ;; esac
  STEELYARD_CLOCK=$when "$cli" record --store "$new" --task "$task" --by "$by" --why "$why" \
    "$here/$facts" >/dev/null
done <"$here/workshop.tsv"
mv "$new" "$store"
for part in -wal -shm; do
  [ ! -e "$new$part" ] || mv "$new$part" "$store$part"
done
