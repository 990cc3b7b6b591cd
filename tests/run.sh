#!/usr/bin/env bash
# Builds everything and runs every test project, one after another; the last line is `N passed, N failed, N skipped`.
# Usage: tests/run.sh [NAME...]   with names, only the test projects whose name contains one of them (tests/run.sh Metrology)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

. src/build-environment.sh
bash src/system-packages.sh --tests --browser

results="$(mktemp -d)"
trap 'rm -rf "$results"' EXIT

projects=()
for project in tests/*.Tests/*.csproj; do
    wanted=$([ $# -eq 0 ] && echo yes || echo no)
    for name in "$@"; do
        case "$(basename "$project")" in *"$name"*) wanted=yes ;; esac
    done
    if [ "$wanted" = yes ]; then projects+=("$project"); fi
done
if [ ${#projects[@]} -eq 0 ]; then
    echo "tests/run.sh: no test project is called $*." >&2
    exit 2
fi

echo "Building ..."
if [ $# -eq 0 ]; then
    dotnet build SectionScan.sln -c Release -v q --nologo </dev/null
else
    for project in "${projects[@]}"; do dotnet build "$project" -c Release -v q --nologo </dev/null; done
fi

# One after another: each run already uses every core, and figures of time and memory must not disturb one another.
passed=0 failed=0 skipped=0 broken=()
for project in "${projects[@]}"; do
    name="$(basename "$project" .csproj)"
    started=$SECONDS
    status=0
    dotnet test "$project" -c Release --no-build --nologo \
        --logger "trx;LogFileName=$name.trx" --results-directory "$results" </dev/null 2>&1 |
        { grep -vE '^(Test run for |A total of |Results File: |Additionally, path to test adapters|Passed! |$)' || true; } || status=$?

    total=0 executed=0 ok=0
    if [ -f "$results/$name.trx" ]; then
        # <Counters total="12" executed="11" passed="10" failed="1" .../>: the first three tell all, however a test went wrong.
        counters="$(sed -n 's/.*<Counters total="\([0-9]*\)" executed="\([0-9]*\)" passed="\([0-9]*\)".*/\1 \2 \3/p' "$results/$name.trx")"
        read -r total executed ok <<<"${counters:-0 0 0}"
    fi
    bad=$((executed - ok))
    # A crashed or hung test host leaves no failed test behind, only its exit code: that is a failure too.
    if [ "$status" -ne 0 ] && [ "$bad" -eq 0 ]; then
        bad=1
        broken+=("$name ended with exit code $status")
    fi
    if [ "$total" -eq 0 ] && [ "$status" -eq 0 ]; then
        broken+=("$name holds no test")
    fi
    passed=$((passed + ok)) failed=$((failed + bad)) skipped=$((skipped + total - executed))
    echo "$name: $ok of $total passed, $bad failed, in $((SECONDS - started)) s"
done

for line in ${broken[@]+"${broken[@]}"}; do echo "Attention: $line."; done
echo "$passed passed, $failed failed, $skipped skipped"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
