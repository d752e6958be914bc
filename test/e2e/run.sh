#!/usr/bin/env bash
# The end-to-end tests: the packaged extension in the real VS Code workbench, driven as a user drives it.
# Pictures go to .out/screenshots/; the last line says how many tests passed and failed.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

export WORKBENCH_DIR=${WORKBENCH_DIR:-$PWD/.out/workbench}
bash test/e2e/install.sh "$WORKBENCH_DIR"
npm run --silent package
exec "$PWD/node_modules/.bin/node" --test-reporter=./test/e2e/report.mjs test/e2e/run.mjs "$@"
