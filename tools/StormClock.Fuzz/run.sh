#!/bin/sh
# Coverage-guided fuzzing of the readers. Needs afl-fuzz (AFL++) and the dotnet tool SharpFuzz.CommandLine 2.3.0 (sharpfuzz).
#   tools/StormClock.Fuzz/run.sh SEEDS OUTPUT SECONDS
# SEEDS is a folder of good messages, one a file.
set -eu
here=$(dirname "$0")
build=$(mktemp -d)
dotnet build "$here" -c Release -v q -o "$build"
sharpfuzz "$build/StormClock.Core.dll"
AFL_SKIP_BIN_CHECK=1 AFL_SKIP_CPUFREQ=1 AFL_NO_AFFINITY=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_NO_UI=1 DOTNET_TieredPGO=0 \
    afl-fuzz -i "$1" -o "$2" -V "$3" -t 20000 -m none -- dotnet "$build/StormClock.Fuzz.dll"
