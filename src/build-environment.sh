# Sourced by the repository's scripts: what every `dotnet` call here needs, the same for a person and for a build server.
# shellcheck shell=bash

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false
export DOTNET_CLI_UI_LANGUAGE=en DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=1 DOTNET_SKIP_WORKLOAD_INTEGRITY_CHECK=1
# Build servers outlive the script and would keep files of a temporary HOME open.
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0

# `dotnet` and NuGet keep their caches under HOME; a service account may have none, or one that it cannot write.
if [ -z "${HOME:-}" ] || ! mkdir -p "$HOME" 2>/dev/null || [ ! -w "$HOME" ]; then
    HOME="${TMPDIR:-/tmp}/sectionscan-home-$(id -u)"
    export HOME
    (umask 077 && mkdir -p "$HOME")
    [ -O "$HOME" ] || { echo "build: $HOME belongs to somebody else. Set HOME to a folder of your own." >&2; exit 1; }
fi

# The SDK does not start without ICU unless told that it may; SectionScan itself uses the invariant culture everywhere.
if command -v ldconfig >/dev/null && ! ldconfig -p | grep -q 'libicuuc\.so'; then
    export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1
fi

needed_sdk_major=10
if ! command -v dotnet >/dev/null; then
    echo "build: the .NET SDK is not installed (no 'dotnet' on the PATH)." >&2
    echo "       Install the .NET $needed_sdk_major SDK: https://dotnet.microsoft.com/download" >&2
    exit 1
fi
if ! dotnet --list-sdks | awk -F. -v needed="$needed_sdk_major" '$1 + 0 >= needed { found = 1 } END { exit !found }'; then
    echo "build: the .NET $needed_sdk_major SDK is needed; 'dotnet --list-sdks' shows:" >&2
    dotnet --list-sdks >&2
    echo "       Install it: https://dotnet.microsoft.com/download" >&2
    exit 1
fi
