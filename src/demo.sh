#!/usr/bin/env bash
# From a fresh clone to measured, compared sections: brings the system packages, builds, and runs the demonstration.
# Whatever is given to this script is handed to `sectionscan demo`.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

. src/build-environment.sh
bash src/system-packages.sh
echo "Building SectionScan ..."
dotnet build src/SectionScan.Cli/SectionScan.Cli.csproj -c Release -v q --nologo
exec dotnet src/SectionScan.Cli/bin/Release/net10.0/sectionscan.dll demo "$@"
