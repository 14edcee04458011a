#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# build-demo.sh STEELYARD-CLI STORE
# Makes the store of the demo workshop, an invented press and roll-forming shop. Every line of
# workshop.tsv is one revision, of the facts in this folder; every line of deeds.tsv is something
# done about an item besides. Each is recorded as on the day it names. The store must not exist yet.
set -eu

[ $# -eq 2 ] || { echo "usage: build-demo.sh STEELYARD-CLI STORE" >&2; exit 2; }
cli=$1 store=$2
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
[ ! -e "$store" ] || { echo "$store is there already" >&2; exit 1; }

# Made beside its place and moved there when it is whole.
new="$store.new"
rm -f "$new" "$new-wal" "$new-shm"
declare -A actions # by the word that deeds.tsv calls them by

record() { # WHEN BY TASK FACTS WHY
  STEELYARD_CLOCK=$1 "$cli" record --store "$new" --task "$3" --by "$2" --why "$5" "$here/$4" >/dev/null
}

deed() { # WHEN BY ROLE "WHAT ARGUMENT…" ITEM "--option|value|…"
  local -a what words common
  local made
  read -ra what <<<"$4"
  IFS='|' read -ra words <<<"$6"
  common=(--store "$new" --by "$2" --role "$3")
  export STEELYARD_CLOCK=$1
  case ${what[0]} in
    sign | told) "$cli" "${what[0]}" "${common[@]}" "${words[@]}" "$5" "${what[1]}" >/dev/null ;;
    review) "$cli" review "${common[@]}" --trigger "${what[1]}" --due "${what[2]}" "${words[@]}" "$5" >/dev/null ;;
    improve) "$cli" improvement "${common[@]}" "${words[@]}" "$5" add "${what[1]}" >/dev/null ;;
    retire) "$cli" retire "${common[@]}" "${words[@]}" "$5" >/dev/null ;;
    open)
      made=$("$cli" action "${common[@]}" "$5" open "${words[@]}")
      made=${made#*\"action\":\"}
      actions[${what[1]}]=${made%%\"*}
      ;;
    close) "$cli" action "${common[@]}" "$5" close "${actions[${what[1]}]}" "${words[@]}" >/dev/null ;;
    *) echo "deeds.tsv: no deed “${what[0]}”" >&2; exit 1 ;;
  esac
}

while IFS=$'\t' read -r when by third fourth fifth sixth; do
  if [ -n "$sixth" ]; then
    deed "$when" "$by" "$third" "$fourth" "$fifth" "$sixth"
  else
    record "$when" "$by" "$third" "$fourth" "$fifth"
  fi
done < <(cat "$here/workshop.tsv" "$here/deeds.tsv" | grep -v '^#' | grep . | LC_ALL=C sort -s -t $'\t' -k1,1)
mv "$new" "$store"
for part in -wal -shm; do
  [ ! -e "$new$part" ] || mv "$new$part" "$store$part"
done
