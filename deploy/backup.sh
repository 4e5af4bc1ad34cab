#!/usr/bin/env bash
# One archive of a stopped StormClock's data folder: database, its log, keys of links, forms and notifications, notes, photos, unsent .eml files.
#   backup.sh DATA_FOLDER TARGET_FOLDER
# StormClock must not run: the script takes the same lock and refuses while it is held, and keeps it while it copies.
set -euo pipefail

[ $# -eq 2 ] || { echo "usage: backup.sh DATA_FOLDER TARGET_FOLDER" >&2; exit 2; }
data=$1
target=$2
[ -f "$data/stormclock.db" ] || { echo "$data: holds no stormclock.db; name the data folder" >&2; exit 1; }

exec 9<>"$data/stormclock.lock"
flock -n 9 || { echo "$data: StormClock is running there; stop it first" >&2; exit 3; }

umask 077 # the archive holds the keys that sign links
mkdir -p "$target"
archive="$target/stormclock-$(date -u +%Y%m%dT%H%M%SZ).tar.gz"
[ ! -e "$archive" ] || { echo "$archive: is there already; try again in a second" >&2; exit 1; }
trap 'rm -f "$archive.part"' EXIT
tar -C "$data" --exclude=./stormclock.lock --exclude='*.part' -czf "$archive.part" .
tar -tzf "$archive.part" ./stormclock.db >/dev/null
sync "$archive.part"
mv "$archive.part" "$archive"
sync "$target"
echo "$archive"
