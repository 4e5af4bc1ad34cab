#!/usr/bin/env bash
# Puts an archive of backup.sh into an empty or missing data folder.
#   restore.sh ARCHIVE DATA_FOLDER
# It never writes over anything: move what is there aside first.
set -euo pipefail

[ $# -eq 2 ] || { echo "usage: restore.sh ARCHIVE DATA_FOLDER" >&2; exit 2; }
archive=$1
data=$2
[ -f "$archive" ] || { echo "$archive: there is no such file" >&2; exit 1; }
tar -tzf "$archive" ./stormclock.db >/dev/null 2>&1 || { echo "$archive: is no whole backup of StormClock" >&2; exit 1; }

umask 077
mkdir -p "$data"
if [ -n "$(ls -A "$data")" ]; then
  echo "$data: is not empty; move what is in it aside, then restore again" >&2
  exit 1
fi
tar -C "$data" -xzpf "$archive"
sync "$data/stormclock.db" "$data"
echo "$data: restored. Give it to the user that StormClock runs as, then start StormClock."
