#!/usr/bin/env bash
# The end-to-end tests: the packaged extension in the real VS Code workbench, driven as a user drives it.
# Pictures go to .out/screenshots/; the last line says how many tests passed and failed.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

export WORKBENCH_DIR=${WORKBENCH_DIR:-$PWD/.out/workbench}
bash test/e2e/install.sh "$WORKBENCH_DIR"
# The reader of PDF that is not ours.
command -v pdftotext >/dev/null || { apt-get update -qq && apt-get install -y -qq --no-install-recommends poppler-utils >/dev/null; }
# The accessibility checker. Its licence, MPL-2.0, is why it is no dependency of ours; nothing of it is passed on.
axe=axe-core@4.14.1
[[ -f $WORKBENCH_DIR/node_modules/axe-core/axe.min.js ]] ||
  (cd "$WORKBENCH_DIR" && npm install --no-audit --no-fund --ignore-scripts --silent --save-exact "$axe")
npm run --silent package
exec "$PWD/node_modules/.bin/node" --test-reporter=./test/e2e/report.mjs test/e2e/run.mjs "$@"
