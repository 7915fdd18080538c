#!/usr/bin/env bash
# Builds the published jars twice from the last commit, in two clean folders of other names and at other times, and
# compares them byte by byte. Prints the SHA-256 of each jar; fails if one differs.
set -euo pipefail
cd "$(dirname "$0")/../.."
commit=$(git rev-parse HEAD)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for copy in first a-second-one; do
  mkdir "$work/$copy"
  git archive "$commit" | tar -x -C "$work/$copy"
  (cd "$work/$copy" && mvn -B -ntp -q -pl core,core/bom,units-adapters verify -DskipTests -Djacoco.skip -Dspotless.check.skip)
  (cd "$work/$copy" && find . -path '*/target/stoplag-*.jar' -print0 | sort -z | xargs -0 sha256sum) > "$work/$copy.sha256"
done
diff "$work/first.sha256" "$work/a-second-one.sha256"
[ "$(grep -c . "$work/first.sha256")" -ge 6 ] || { echo "fewer jars than a library, its sources and its Javadoc for both"; exit 1; }
cat "$work/first.sha256"
echo "the same bytes twice"
