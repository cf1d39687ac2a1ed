#!/usr/bin/env bash
# Kills with kill -9 while mornings are being entered through the real forms: in turn the
# database's postmaster, Fallow, and both. Twenty-four athletes of the demo squad sign in
# once; in each round fifty forms are asked for and then sent all at the same time, and the
# kill comes somewhere in between. Then Fallow is waited for (its own watch brings back a
# database that was killed alone), and every form that was not acknowledged is sent again,
# as it was, until it is. Counts what was acknowledged and is missing, and what is stored
# twice, and fails when a page said that nothing was saved though it was. Needs the built
# jar, psql and curl. It works in a folder of its own.
# Usage: src/test/scripts/kill-nine.sh [rounds, 100] [forms at a time, 50] [minutes at most, 600]
set -euo pipefail
cd "$(dirname "$0")/../../.."

rounds=${1:-100}
forms=${2:-50}
minutes=${3:-600}
password=tarnside-demo # of all accounts of the demo
work=$(mktemp -d)
home=$work/home
fallow=
clean_up() {
	[ -z "$fallow" ] || kill "$fallow" 2>/dev/null && wait "$fallow" 2>/dev/null || true
	rm -rf "$work"
}
trap clean_up EXIT
trap 'echo "FAILED: line $LINENO of the script"' ERR

fail() {
	echo "FAILED: $*"
	cp "$work/output" kill-nine.output 2>/dev/null && echo 'Fallow said what is in kill-nine.output'
	exit 1
}
secret() { sed -n "s/^$1=//p" "$home/passwords.properties"; }
sql() {
	PGPASSWORD=$(secret postgres) psql -X -q -A -t -h localhost -p "$(sed -n 4p "$home/database/postmaster.pid")" \
		-U postgres -d fallow -c "$1"
}
# without a proxy, and without waiting for ever
ask() { curl --silent --noproxy '*' --max-time 60 "$@"; }
field() { sed -n "s/.*name=\"$1\" value=\"\([^\"]*\)\".*/\1/p" "$2" | head -n 1; }

wait_until_ready() {
	local begin end tries=0
	begin=$(date +%s%N)
	while true; do
		web=$(sed -n 's/.*Tomcat started on port \([0-9]*\).*/\1/p' "$work/output" | tail -n 1)
		if [ -n "$web" ] && ask "http://localhost:$web/actuator/health/readiness" | grep -q '"status":"UP"'; then
			break
		fi
		kill -0 "$fallow" 2>/dev/null || fail 'Fallow ended'
		tries=$((tries + 1))
		[ "$tries" -lt 3000 ] || fail 'Fallow does not become ready'
		sleep 0.1
	done
	end=$(date +%s%N)
	seconds=$(awk "BEGIN { printf \"%.1f\", ($end - $begin) / 1e9 }")
}
start_fallow() {
	: >"$work/output" # there before anybody looks
	java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -jar "$work/fallow/fallow.jar" --fallow.home="$home" \
		--spring.profiles.active=demo --fallow.demo.keep=true --server.port=0 --server.address=127.0.0.1 >"$work/output" 2>&1 &
	fallow=$!
	wait_until_ready
}

# Each athlete's session is kept in a cookie jar and outlives every kill: sessions are in the database.
sign_in() {
	local page=$work/sign-in jar=$work/jar.$1 to
	ask --cookie-jar "$jar" "http://localhost:$web/sign-in" >"$page"
	to=$(ask --cookie "$jar" --cookie-jar "$jar" --output /dev/null --write-out '%{redirect_url}' \
		--data-urlencode "_csrf=$(field _csrf "$page")" --data-urlencode "username=$1" \
		--data-urlencode "password=$password" --data stay=on "http://localhost:$web/sign-in")
	case $to in
	*/sign-in*|'') fail "$1 cannot sign in: $to" ;;
	esac
	# as a browser does: the first page makes the token that all forms of the session bear
	ask --cookie "$jar" --location --output /dev/null "$to"
}

# Form n of a round: an athlete, and one of the last days, so that no two forms of a round are of the same day.
athlete_of() { echo "${athletes[$(($1 % ${#athletes[@]}))]}"; }
# as a header, since curl shares its cookies among what it sends at the same time
session_of() { awk '$6 == "SESSION" { print $7 }' "$work/jar.$(athlete_of "$1")"; }
day_of() { date -u -d "-$(($1 / ${#athletes[@]})) days" +%F; }

ask_for_forms() {
	local n
	: >"$work/get"
	rm -f "$work"/form.*
	for n in $(seq 0 $((forms - 1))); do
		[ "$n" -eq 0 ] || echo next >>"$work/get"
		printf 'url = "http://localhost:%s/morning?day=%s"\nheader = "Cookie: SESSION=%s"\noutput = "%s"\nnoproxy = "*"\nmax-time = 60\n' \
			"$web" "$(day_of "$n")" "$(session_of "$n")" "$work/form.$n" >>"$work/get"
	done
	curl --silent --parallel --parallel-max "$forms" --parallel-immediate --config "$work/get" 2>/dev/null || true
	for n in $(seq 0 $((forms - 1))); do
		[ -s "$work/form.$n" ] || fail "form $n did not come"
		field requestId "$work/form.$n" >"$work/id.$n"
		[ -s "$work/id.$n" ] || fail "instead of form $n came $(head -c 300 "$work/form.$n")"
		printf '_csrf=%s&requestId=%s&revision=%s&day=%s&rhr=%s&method=TAP&posture=LYING&feverMedicine=NONE&allWell=true' \
			"$(field _csrf "$work/form.$n")" "$(cat "$work/id.$n")" "$(field revision "$work/form.$n")" \
			"$(day_of "$n")" "$((44 + RANDOM % 8))" >"$work/body.$n"
	done
}

# Sends some forms at once; whose answer leads to the athlete's day is acknowledged.
send() {
	local n answers=$work/answers
	: >"$work/post"
	rm -f "$work"/answer.*
	for n in "$@"; do
		[ ! -s "$work/post" ] || echo next >>"$work/post"
		printf 'url = "http://localhost:%s/morning"\nheader = "Cookie: SESSION=%s"\ndata = "@%s"\noutput = "%s"\nnoproxy = "*"\nmax-time = 60\nwrite-out = "%s %%{http_code} %%{redirect_url}\\n"\n' \
			"$web" "$(session_of "$n")" "$work/body.$n" "$work/answer.$n" "$n" >>"$work/post"
	done
	curl --silent --parallel --parallel-max "$forms" --parallel-immediate --config "$work/post" >"$answers" 2>/dev/null || true
	awk '$2 == 302 && $3 ~ /\/today$/ { print $1 }' "$answers" | sort -n >"$work/taken"
	awk '{ print $2 }' "$answers" | sort | uniq -c | awk '{ printf "%s%s x %s", n++ ? ", " : "", $1, $2 }' >"$work/codes"
}
ids() { while read -r n; do cat "$work/id.$n"; done; }

java -Djarmode=tools -jar target/fallow.jar extract --destination "$work/fallow" >/dev/null
start_fallow
echo "first start: ready after $seconds s"
mapfile -t athletes < <(sql 'select username from account join athlete_status on athlete_id = person_id order by 1')
[ "${#athletes[@]}" -ge $(((forms + 7) / 8)) ] || fail "${#athletes[@]} athletes are too few"
for athlete in "${athletes[@]}"; do sign_in "$athlete"; done
before=$(sql 'select count(*) from morning_entry')
: >"$work/acknowledged"
again=0
killed_unsure=0
done=0
for round in $(seq "$rounds"); do
	[ "$SECONDS" -lt $((minutes * 60)) ] || { echo "time is up after $done rounds"; break; }
	ask_for_forms
	send $(seq 0 $((forms - 1))) &
	sender=$!
	sleep "$(awk "BEGIN { printf \"%.3f\", ($RANDOM % 900 + 20) / 1000 }")"
	postmaster=$(head -n 1 "$home/database/postmaster.pid")
	case $((round % 3)) in
	1) how='the postmaster'; kill -9 "$postmaster" ;;
	2) how='Fallow'; kill -9 "$fallow" ;;
	0) how='both'; kill -9 "$fallow" "$postmaster" ;;
	esac
	[ "$how" = 'the postmaster' ] || { wait "$fallow" 2>/dev/null || true; }
	wait "$sender"
	first=$(wc -l <"$work/taken")
	codes=$(cat "$work/codes")
	ids <"$work/taken" | sort >"$work/round"
	if [ "$how" = 'the postmaster' ]; then wait_until_ready; else start_fallow; fi
	sql 'select request_id from morning_entry' | sort >"$work/stored"
	missing=$(comm -23 "$work/round" "$work/stored" | wc -l)
	[ "$missing" -eq 0 ] || fail "round $round: $missing acknowledged mornings are missing"
	cat "$work/round" >>"$work/acknowledged"
	# what was stored though nobody was told so
	rest=$(seq 0 $((forms - 1)) | grep -vxFf "$work/taken" || true)
	unsure=$(for n in $rest; do cat "$work/id.$n"; done | sort | comm -12 - "$work/stored" | wc -l)
	killed_unsure=$((killed_unsure + unsure))
	# a page that says so has to be right
	for n in $rest; do
		! grep -qxF -f "$work/id.$n" "$work/stored" \
			|| ! grep -qs 'Nothing of what you entered was saved' "$work/answer.$n" \
			|| fail "round $round: form $n is stored, and the page says that nothing was saved"
	done
	sent_again=$(wc -w <<<"$rest")
	again=$((again + sent_again))
	tries=0
	while [ -n "$rest" ]; do
		send $rest
		ids <"$work/taken" >>"$work/acknowledged"
		rest=$(grep -vxFf "$work/taken" <<<"$rest" || true)
		tries=$((tries + 1))
		[ "$tries" -lt 20 ] || fail "round $round: forms $rest are not taken, $(cat "$work/codes")"
	done
	echo "round $round, killed $how: $first of $forms acknowledged ($codes), $missing missing; ready again after $seconds s, $sent_again sent again, $unsure of them had been stored"
	done=$round
done
sort "$work/acknowledged" >"$work/all"
sql 'select request_id from morning_entry' | sort >"$work/stored"
missing=$(comm -23 "$work/all" "$work/stored" | wc -l)
doubled=$(grep -xFf "$work/all" "$work/stored" | uniq -d | wc -l)
rows=$(($(sql 'select count(*) from morning_entry') - before))
total=$((done * forms))
echo "$done rounds of $forms forms: $(wc -l <"$work/all") acknowledged, $missing missing; $again sent again, $killed_unsure of them had been stored; $rows mornings stored, $((rows - total)) too many, $doubled ids doubled"
[ "$missing" -eq 0 ] && [ "$doubled" -eq 0 ] && [ "$rows" -eq "$total" ] || fail 'the counts do not agree'
behind=$(sql 'select count(*) from morning_entry m where not exists (select 1 from assessment a where a.athlete_id = m.athlete_id and a.day = m.day)')
[ "$behind" -eq 0 ] || fail "$behind mornings are stored but not assessed"
echo 'PASSED: nothing acknowledged is missing, nothing is stored twice, every morning is assessed'
