#!/usr/bin/env bash
# Kills Fallow with kill -9 over and over while rows are being committed, alone in odd
# rounds and together with its postmaster in even ones, starts it again, and checks that
# no acknowledged row is missing. Needs the built jar, psql and curl.
# Usage: src/test/scripts/kill-nine.sh [rounds, 20]
set -euo pipefail
cd "$(dirname "$0")/../../.."

rounds=${1:-20}
work=$(mktemp -d)
home=$work/home
acknowledged=$work/acknowledged
fallow=
writer=
clean_up() {
	[ -z "$writer" ] || kill "$writer" 2>/dev/null || true
	[ -z "$fallow" ] || kill "$fallow" 2>/dev/null && wait "$fallow" 2>/dev/null || true
	rm -rf "$work"
}
trap clean_up EXIT

password() { sed -n "s/^$1=//p" "$home/passwords.properties"; }
port() { sed -n 4p "$home/database/postmaster.pid"; }
sql() { PGPASSWORD=$(password fallow_owner) psql -X -q -A -t -h localhost -p "$(port)" -U fallow_owner -d fallow "$@"; }

start_fallow() {
	local begin end web
	begin=$(date +%s%N)
	java -XX:TieredStopAtLevel=1 -jar target/fallow.jar --fallow.home="$home" --server.port=0 >"$work/output" 2>&1 &
	fallow=$!
	while true; do
		web=$(sed -n 's/.*Tomcat started on port \([0-9]*\).*/\1/p' "$work/output")
		if [ -n "$web" ] && curl --silent --noproxy '*' "http://localhost:$web/actuator/health" | grep -q '"status":"UP"'; then
			break
		fi
		kill -0 "$fallow" 2>/dev/null || { cat "$work/output"; echo 'FAILED: Fallow did not start'; exit 1; }
		sleep 0.1
	done
	end=$(date +%s%N)
	seconds=$(awk "BEGIN { printf \"%.1f\", ($end - $begin) / 1e9 }")
}

# One session commits row after row and prints a number only once its commit is answered.
write_rows() {
	awk -v from="$1" 'BEGIN { for (i = from; ; i++) print "insert into kill_nine values (" i ") returning n;" }' \
		| sql -v ON_ERROR_STOP=1 >>"$acknowledged" 2>/dev/null || true
}

start_fallow
echo "first start: $seconds s"
sql -c 'create table kill_nine (n bigint primary key)'
: >"$acknowledged"
next=1
for round in $(seq "$rounds"); do
	write_rows "$next" &
	writer=$!
	sleep "0.$((RANDOM % 8 + 2))"
	postmaster=$(head -n 1 "$home/database/postmaster.pid")
	if [ $((round % 2)) -eq 1 ]; then
		how='Fallow alone'
		kill -9 "$fallow"
	else
		how='Fallow and its postmaster'
		kill -9 "$fallow" "$postmaster"
	fi
	wait "$fallow" 2>/dev/null || true
	start_fallow
	wait "$writer" 2>/dev/null || true
	writer=
	sql -c 'select n from kill_nine' | sort >"$work/stored"
	missing=$(grep -E '^[0-9]+$' "$acknowledged" | sort | comm -23 - "$work/stored" | wc -l)
	count=$(grep -cE '^[0-9]+$' "$acknowledged")
	echo "round $round, killed $how: up again in $seconds s, $count rows acknowledged, $missing missing"
	[ "$missing" -eq 0 ] || { echo 'FAILED: acknowledged rows are missing'; exit 1; }
	next=$(($(sql -c 'select coalesce(max(n), 0) from kill_nine') + 1))
done
echo "PASSED: $rounds rounds, no acknowledged row missing"
