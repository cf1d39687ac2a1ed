#!/usr/bin/env bash
# Seconds from the start command to the first page, processor and memory by then: the plain jar, the jar taken apart with a
# class-data archive (JDK 17 and later) and with an ahead-of-time cache (JDK 25), by turns on one home with its own
# database. Another jar, for a comparison, by turns too: OTHER=other.jar. Build first: mvn -DskipTests package. Use: start.sh [rounds, 5 unless told]
set -euo pipefail
cd "$(dirname "$0")/../../.."
rounds=${1:-5}
java17=${JAVA:-java}
java25=$(find /usr/lib/jvm -maxdepth 3 -path '*25*/bin/java' 2>/dev/null | sort | head -n 1 || true)
work=$(mktemp -d)
pid=
clean_up() {
	if [ -n "$pid" ] && kill -0 "$pid" 2>/dev/null; then kill "$pid"; wait "$pid" || true; fi
	rm -rf "$work"
}
trap clean_up EXIT

# Memory that belongs to a process and its children, MB: shared pages counted by share.
memory() {
	local one
	for one in $( { echo "$1"; pgrep -f -- "-D $work/home"; for c in $(pgrep -f -- "-D $work/home"); do pgrep -P "$c"; done; } | sort -u); do
		awk '/^Pss:/ {print $2}' "/proc/$one/smaps_rollup" 2>/dev/null || true
	done | awk '{ all += $1 } END { printf "%d", all / 1024 }'
}

# name, then the command
start() {
	local name=$1 begun ended port=
	shift
	begun=$(date +%s%N)
	"$@" --fallow.home="$work/home" --server.port=0 >"$work/output" 2>&1 &
	pid=$!
	for _ in $(seq 2400); do
		port=$(sed -n 's/.*Tomcat started on port \([0-9]*\).*/\1/p' "$work/output")
		if [ -n "$port" ] && curl --silent --noproxy '*' --location --output /dev/null --fail "http://localhost:$port/"; then
			break
		fi
		kill -0 "$pid" || { cat "$work/output"; exit 1; }
		sleep 0.02
	done
	ended=$(date +%s%N)
	echo "$name $(((ended - begun) / 1000000)) ms, $(awk '{ print ($14 + $15) * 10 }' "/proc/$pid/stat") ms of processor, $(($(awk '/^VmRSS:/ {print $2}' "/proc/$pid/status") / 1024)) MB resident, $(memory "$pid") MB with its database"
	kill "$pid"
	wait "$pid" || true
	pid=
}

# Starts, asks for pages and ends, so that Java keeps what it read: the command
train() {
	local port=
	"$@" --fallow.home="$work/home" --server.port=0 >"$work/training" 2>&1 &
	pid=$!
	while [ -z "$port" ]; do
		kill -0 "$pid" || { cat "$work/training"; exit 1; }
		sleep 0.1
		port=$(sed -n 's/.*Tomcat started on port \([0-9]*\).*/\1/p' "$work/training")
	done
	for page in / /sign-in /set-up /actuator/health; do
		curl --silent --noproxy '*' --location --output /dev/null "http://localhost:$port$page"
	done
	kill "$pid"
	wait "$pid" || true
	pid=
}

start 'first start on an empty home:' "$java17" -jar target/fallow.jar
"$java17" -Djarmode=tools -jar target/fallow.jar extract --destination "$work/fallow" >/dev/null
train "$java17" -XX:ArchiveClassesAtExit="$work/fallow.jsa" -jar "$work/fallow/fallow.jar"
if [ -n "$java25" ]; then
	train "$java25" -XX:AOTCacheOutput="$work/fallow.aot" -jar "$work/fallow/fallow.jar"
fi
quick=(-XX:TieredStopAtLevel=1 -XX:+UseSerialGC)
for _ in $(seq "$rounds"); do
	if [ -n "${OTHER:-}" ]; then
		start 'the other plain jar:' "$java17" -jar "$OTHER"
	fi
	start 'plain jar:' "$java17" -jar target/fallow.jar
	start 'plain jar, compiled little:' "$java17" "${quick[@]}" -jar target/fallow.jar
	start 'archive:' "$java17" -XX:SharedArchiveFile="$work/fallow.jsa" -jar "$work/fallow/fallow.jar"
	start 'archive, compiled little:' "$java17" "${quick[@]}" -XX:SharedArchiveFile="$work/fallow.jsa" -jar "$work/fallow/fallow.jar"
	if [ -n "$java25" ]; then
		start 'cache on JDK 25:' "$java25" -XX:AOTCache="$work/fallow.aot" -jar "$work/fallow/fallow.jar"
	fi
done
