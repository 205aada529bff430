# Installs what judges the pages into build/browser, once; that needs the network.
# shellcheck shell=bash

# install_judges HERE WORK
install_judges() {
  local here=$1 work=$2
  mkdir -p "$work" && cd "$work" || return
  [ -e complete ] && cmp -s "$here/package-lock.json" package-lock.json && return
  rm -rf complete node_modules
  cp "$here/package.json" "$here/package-lock.json" . || return
  npm ci --no-audit --no-fund --ignore-scripts --fetch-retries=3 && touch complete && return
  echo "npm has to reach its registry; see \`npm config get registry\`."
  return 1
}
