#!/usr/bin/env bash
# Kills a first start with kill -9 at random moments, the database's processes left as they
# are, and checks that the next start of the same home becomes ready. Every round has a
# home of its own. Needs the built jar and curl.
# Usage: src/test/scripts/kill-first-start.sh [rounds, 20] [seconds within which the kill comes, 12]
set -euo pipefail
cd "$(dirname "$0")/../../.."

rounds=${1:-20}
within=${2:-12}
work=$(mktemp -d)
fallow=
clean_up() {
	[ -z "$fallow" ] || kill "$fallow" 2>/dev/null && wait "$fallow" 2>/dev/null || true
	rm -rf "$work"
}
trap clean_up EXIT

start_fallow() {
	: >"$work/output" # there before anybody looks
	java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -jar "$work/fallow/fallow.jar" --fallow.home="$work/home" --server.port=0 \
		--server.address=127.0.0.1 >"$work/output" 2>&1 &
	fallow=$!
}
is_ready() {
	local web
	web=$(sed -n 's/.*Tomcat started on port \([0-9]*\).*/\1/p' "$work/output")
	[ -n "$web" ] && curl --silent --noproxy '*' --max-time 20 "http://localhost:$web/actuator/health/readiness" | grep -q '"status":"UP"'
}

java -Djarmode=tools -jar target/fallow.jar extract --destination "$work/fallow" >/dev/null
for round in $(seq "$rounds"); do
	start_fallow
	moment=$(awk "BEGIN { printf \"%.2f\", ($RANDOM / 32768) * $within }")
	sleep "$moment"
	kill -9 "$fallow" 2>/dev/null || true
	wait "$fallow" 2>/dev/null || true
	left=$(ls "$work/home" 2>/dev/null | tr '\n' ' ' || true)
	start_fallow
	tries=0
	until is_ready; do
		tries=$((tries + 1))
		if [ "$tries" -gt 1800 ] || ! kill -0 "$fallow" 2>/dev/null; then
			cat "$work/output"
			echo "FAILED: round $round, killed after $moment s, does not start; it had left: $left"
			exit 1
		fi
		sleep 0.1
	done
	echo "round $round: killed after $moment s, left: ${left:-nothing}; starts"
	kill "$fallow"
	wait "$fallow" 2>/dev/null || true
	fallow=
	rm -rf "$work/home"
done
echo "PASSED: $rounds first starts killed, each home started"
