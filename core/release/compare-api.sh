#!/usr/bin/env bash
# Compares the public API with that of an earlier commit or tag: compare-api.sh REF. The reports are target/japicmp/api.html of core and
# units-adapters; with -Dstoplag.api.strict=true behind REF what breaks a user's program fails the build.
set -euo pipefail
cd "$(dirname "$0")/../.."
ref=$(git rev-parse "$1")
shift
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/old" "$work/jars"
git archive "$ref" | tar -x -C "$work/old"
(cd "$work/old" && mvn -B -ntp -q -pl core,units-adapters package -DskipTests -Dmaven.test.skip=true -Dmaven.source.skip)
for artifact in core units-adapters; do
  cp "$work/old/$artifact/target/stoplag-$artifact-"*[0-9T].jar "$work/jars/stoplag-$artifact.jar"
done
mvn -B -ntp -q -Papi -pl core,units-adapters verify -Dmaven.test.skip=true -Djacoco.skip -Dmaven.javadoc.skip -Dmaven.source.skip \
  -Dspotless.check.skip -Dstoplag.baseline="$work/jars" "$@"
grep -hE "^(\*\*\*|---|\+\+\+)" core/target/japicmp/api.diff units-adapters/target/japicmp/api.diff | grep "CLASS" || echo "no class changed"
