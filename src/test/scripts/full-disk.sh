#!/usr/bin/env bash
# Fills a small real disk under a home of Fallow's own in the middle of an entry, of an
# import and of a migration, makes room again, and looks at what is stored. The disk is a
# tmpfs of its own, which root may mount; anybody else runs it in a user namespace where
# those are allowed. A morning that is refused gets its sentence, keeps what was typed and
# is taken once when it is sent again; an import says where it stopped and goes on by
# itself; a migration is taken back whole, the start ends with a sentence and exit code 1,
# and starts after room was made. Fails if anything is half written or stored twice. Needs
# the built jar (or compiled classes, named by FALLOW_CLASSPATH), psql, curl and 1.2 GB of
# memory.
# Usage: src/test/scripts/full-disk.sh [megabytes of the disk, 900]
set -euo pipefail
cd "$(dirname "$0")/../../.."
if [ "$(id -u)" -ne 0 ]; then
	exec unshare --user --map-root-user --mount bash "src/test/scripts/$(basename "$0")" "$@"
fi

megabytes=${1:-900}
password=tarnside-demo # of all accounts of the demo
work=$(mktemp -d)
disk=$work/disk
home=$disk/home
fallow=
clean_up() {
	[ -z "$fallow" ] || kill "$fallow" 2>/dev/null && wait "$fallow" 2>/dev/null || true
	for try in 1 2 3 4 5; do umount "$disk" 2>/dev/null && break || sleep 1; done
	rm -rf "$work"
}
trap clean_up EXIT
trap 'echo "FAILED: line $LINENO of the script"' ERR

fail() {
	echo "FAILED: $*"
	cp "$work/output" full-disk.output 2>/dev/null; cp "$work/answer" full-disk.answer 2>/dev/null && echo 'Fallow said what is in full-disk.output'
	exit 1
}
secret() { sed -n "s/^$1=//p" "$home/passwords.properties"; }
sql() {
	PGPASSWORD=$(secret postgres) psql -X -q -A -t -h localhost -p "$(sed -n 4p "$home/database/postmaster.pid")" \
		-U postgres -d fallow -c "$1"
}
ask() { curl --silent --noproxy '*' --max-time 120 "$@"; }
field() { sed -n "s/.*name=\"$1\" value=\"\([^\"]*\)\".*/\1/p" "$2" | head -n 1; }
free() { df --output=avail -k "$disk" | tail -n 1 | tr -d ' '; }

# Leaves so many kilobytes free, or frees all.
fill_to() {
	local over=$(($(free) - $1))
	[ "$over" -le 0 ] || head -c $((over * 1024)) /dev/zero >>"$disk/filler" 2>/dev/null || true
}
make_room() { rm -f "$disk/filler"; }

wait_until_ready() {
	local tries=0
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
}
run_fallow() {
	: >"$work/output" # there before anybody looks
	java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC "${program[@]}" --fallow.home="$home" \
		--spring.profiles.active=demo --fallow.demo.keep=true --server.port=0 --server.address=127.0.0.1 \
		--fallow.database.restart-after=0s,5s,10s,20s,30s "$@" >"$work/output" 2>&1 &
	fallow=$!
}
stop_fallow() {
	kill "$fallow"
	wait "$fallow" || true
	fallow=
}

sign_in() {
	local page=$work/sign-in jar=$work/jar.$1 to
	ask --cookie-jar "$jar" "http://localhost:$web/sign-in" >"$page"
	to=$(ask --cookie "$jar" --cookie-jar "$jar" --output /dev/null --write-out '%{redirect_url}' \
		--data-urlencode "_csrf=$(field _csrf "$page")" --data-urlencode "username=$1" \
		--data-urlencode "password=$password" --data stay=on "http://localhost:$web/sign-in")
	case $to in
	*/sign-in*|'') fail "$1 cannot sign in: $to" ;;
	esac
	ask --cookie "$jar" --location --output /dev/null "$to"
}
# as a browser does, which is answered with pages
browse() { ask --header 'Accept: text/html' "$@"; }
page_of() { browse --cookie "$work/jar.$1" "http://localhost:$web$2"; }
half_written() {
	sql "select (select count(*) from morning_entry m where not exists
		(select 1 from assessment a where a.athlete_id = m.athlete_id and a.day = m.day))
		+ (select count(*) from (select 1 from morning_entry group by athlete_id, request_id having count(*) > 1) d)"
}

mkdir "$disk"
mount -t tmpfs -o "size=${megabytes}m" tmpfs "$disk"
if [ -n "${FALLOW_CLASSPATH:-}" ]; then
	program=(-cp "$FALLOW_CLASSPATH" org.fallow.FallowApplication)
else
	java -Djarmode=tools -jar target/fallow.jar extract --destination "$work/fallow" >/dev/null
	program=(-jar "$work/fallow/fallow.jar")
fi
run_fallow
wait_until_ready
[ "$(half_written)" -eq 0 ] || fail 'the demo is half written'
echo "a disk of $megabytes MB, $(($(free) / 1024)) MB of them free with the demo"

# ---- an entry
mapfile -t athletes < <(sql 'select username from account join athlete_status on athlete_id = person_id order by 1')
for athlete in "${athletes[@]}"; do sign_in "$athlete"; done
sign_in "$(sql "select username from account where person_id in (select person_id from post where kind = 'HEAD_COACH') order by 1 limit 1")"
coach=$(sql "select username from account where person_id in (select person_id from post where kind = 'HEAD_COACH') order by 1 limit 1")
# forms asked for while there is room, as people have them open; one a day and athlete
forms=0
for back in 0 1 2 3; do
	day=$(date -u -d "-$back days" +%F)
	for athlete in "${athletes[@]}"; do
		page_of "$athlete" "/morning?day=$day" >"$work/form"
		field requestId "$work/form" >"$work/id.$forms"
		[ -s "$work/id.$forms" ] || fail "the form of $athlete did not come"
		printf '_csrf=%s&requestId=%s&revision=%s&day=%s&rhr=47&method=TAP&posture=LYING&feverMedicine=NONE&allWell=true&note=%s' \
			"$(field _csrf "$work/form")" "$(cat "$work/id.$forms")" "$(field revision "$work/form")" "$day" \
			"$(printf 'a plover %.0s' $(seq 30) | tr ' ' +)" >"$work/body.$forms"
		echo "$athlete" >"$work/who.$forms"
		forms=$((forms + 1))
	done
done
# sends form n; "$code" and "$work/answer" are what came
send() {
	code=$(browse --cookie "$work/jar.$(cat "$work/who.$1")" --data "@$work/body.$1" --output "$work/answer" \
		--write-out '%{http_code} %{redirect_url}' "http://localhost:$web/morning")
}
stored() { sql "select count(*) from morning_entry where request_id = '$(cat "$work/id.$1")'"; }
fill_to 0
taken=0
refused=
for n in $(seq 0 $((forms - 1))); do
	send "$n"
	case $code in
	'302 '*/today) taken=$((taken + 1)) ;;
	507*|503*) refused=$n; break ;;
	*) fail "form $n on a full disk: $code" ;;
	esac
done
[ -n "$refused" ] || fail "all $forms mornings found room"
kept=$work/kept
cp "$work/answer" "$kept"
grep -qE 'Nothing of what you entered was saved|Nobody can say now' "$kept" || fail 'the refused morning got no sentence'
sentence="${code%% *} $(sed -n 's/.*<h1[^>]*>\([^<]*\)<.*/\1/p' "$kept" | head -n 1)"
grep -q 'name="rhr" value="47"' "$kept" && grep -q 'name="note" value="a plover a plover' "$kept" || fail 'what was typed is not kept'
health=$(ask "http://localhost:$web/actuator/health" --header 'Accept: application/json')
make_room
wait_until_ready
if grep -q 'Nothing of what you entered was saved' "$kept"; then
	[ "$(stored "$refused")" -eq 0 ] || fail 'the morning is stored, and the page says it is not'
fi
# the form that the page kept, as its button sends it
printf '%s' "$(cat "$work/body.$refused")" | sed "s/_csrf=[^&]*/_csrf=$(field _csrf "$kept")/" >"$work/body.again"
cp "$work/body.again" "$work/body.$refused"
tries=0
until send "$refused"; [[ $code = '302 '*/today ]]; do
	tries=$((tries + 1))
	[ "$tries" -lt 60 ] || fail "sent again: $code"
	sleep 1
done
for n in $(seq 0 "$refused"); do
	[ "$(stored "$n")" -eq 1 ] || fail "morning $n is stored $(stored "$n") times"
done
[ "$(half_written)" -eq 0 ] || fail 'a morning is half written'
case $health in *DOWN*) health=DOWN ;; *) health="not DOWN: $health" ;; esac
echo "entry: $taken mornings found room on a full disk, the next got \"$sentence\" with its form, health $health; sent again with room it was taken; each of $((refused + 1)) is stored once, none without assessment"

# ---- an import
team=$(page_of "$coach" /import | sed -n 's/.*<option value="\([0-9a-f-]*\)".*/\1/p' | head -n 1)
[ -n "$team" ] || team=$(sql 'select team_id from membership limit 1')
people=$(sql "select string_agg(p.name, '|' order by p.name) from person p join athlete_status s on s.athlete_id = p.id")
rows=$(awk -v people="$people" 'BEGIN { n = split(people, p, "|"); print "person,date,rhr,note" > "'"$work"'/import.csv"
	for (i = 1; i <= n; i++) for (d = 0; d < 1500; d++) {
		printf "%s,%s,%d,%0400d\n", p[i], strftime("%Y-%m-%d", 1546300800 + d * 86400, 1), 44 + d % 9, d > "'"$work"'/import.csv"; k++ }
	print k }')
# Sends the file; begins to take it in.
send_file() {
	page_of "$coach" /import >"$work/page"
	mapping=$(browse --cookie "$work/jar.$coach" --output "$work/answer" --write-out '%{redirect_url}' --form "_csrf=$(field _csrf "$work/page")" \
		--form "teamId=$team" --form "file=@$work/import.csv;type=text/csv" "http://localhost:$web/import")
	[[ $mapping = */mapping ]] || fail "the file was not taken: $(head -c 300 "$work/answer")"
	job=${mapping%/mapping}
	job=${job#http://localhost:"$web"}
}
begin_import() {
	page_of "$coach" "$job/mapping" >"$work/page"
	code=$(browse --cookie "$work/jar.$coach" --output "$work/answer" --write-out '%{http_code}' --data-urlencode "_csrf=$(field _csrf "$work/page")" \
		--data 'column.PERSON=0&column.DAY=1&column.RHR=2&column.NOTE=3&method=STRAP&posture=LYING' "http://localhost:$web$job/mapping")
	[ "$code" = 302 ] || fail "the import did not start: $code"
}
send_file
before=$(sql "select count(*) from morning_entry where source = 'IMPORT'")
fill_to 40960
begin_import
stopped=
for try in $(seq 600); do
	grep -q 'waits: the database is away or its disk is full' "$work/output" && { stopped=yes; break; }
	page_of "$coach" "$job/progress" >"$work/page" || true
	state=$(sql "select state from import_job order by started_at desc limit 1" 2>/dev/null || true)
	[ "$state" != DONE ] || break
	sleep 0.5
done
[ -n "$stopped" ] || fail 'the import found room for everything'
code=$(browse --cookie "$work/jar.$coach" --output "$work/page" --write-out '%{http_code}' "http://localhost:$web$job")
said=$(grep -oE 'The import has stopped at this place|The disk is full' "$work/page" | tail -n 1 || true)
[ -n "$said" ] || fail "the page of the import says nothing of it: $code"
make_room
wait_until_ready
between=$(($(sql "select count(*) from morning_entry where source = 'IMPORT'") - before))
[ "$(half_written)" -eq 0 ] || fail 'the import that stopped left something half written'
began=$SECONDS
until page_of "$coach" "$job" | grep -q 'class="tally"'; do
	[ $((SECONDS - began)) -lt 900 ] || fail 'the import does not go on'
	sleep 1
done
after=$(($(sql "select count(*) from morning_entry where source = 'IMPORT'") - before))
went='it went on by itself'
if [ "$after" -lt "$rows" ]; then
	# what waits to be taken in does not outlive a crash of the database, which a full disk can bring
	page_of "$coach" "$job" | grep -q 'Send the file again' || fail "$after of $rows lines are stored, and the page does not say why"
	[ "$(half_written)" -eq 0 ] || fail 'the import that broke off left something half written'
	went="the database had crashed and the page asked for the file again; sent again it went on from $after"
	send_file
	begin_import
	until page_of "$coach" "$job" | grep -q 'class="tally"'; do
		[ $((SECONDS - began)) -lt 900 ] || fail 'the import that was sent again does not end'
		sleep 1
	done
	after=$(($(sql "select count(*) from morning_entry where source = 'IMPORT'") - before))
fi
[ "$after" -eq "$rows" ] || fail "$after of $rows lines are stored"
[ "$(half_written)" -eq 0 ] || fail 'the import left something half written'
echo "import: of $rows lines $between were stored, whole people only, when the disk was full; the page said \"$said\" ($code); with room $went to $after in $((SECONDS - began)) s"
stop_fallow

# ---- a migration
mkdir "$work/migration"
echo 'create table widened as select m.*, repeat(md5(m.request_id::text), 400) as wide, g from morning_entry m, generate_series(1, 20) g;
alter table widened alter column wide set storage external;
update widened set wide = wide || day;' >"$work/migration/V900__widen.sql"
more="--spring.flyway.locations=classpath:db/migration,filesystem:$work/migration"
fill_to 61440
run_fallow "$more"
code=0
wait "$fallow" || code=$?
fallow=
[ "$code" -eq 1 ] || fail "the start on a full disk ended with $code"
said=$(grep -v '^\s*$' "$work/output" | grep -E '^The disk .* is full' | head -n 1 | cut -c1-200)
[ -n "$said" ] && ! grep -q '^\s*at org\.' "$work/output" || fail 'the start did not end with a sentence'
make_room
echo 'create table widened as select 1 as wide;' >"$work/migration/V900__widen.sql"
run_fallow
wait_until_ready
[ "$(sql "select count(*) from pg_class where relname = 'widened'")" -eq 0 ] || fail 'the migration is half done'
[ "$(sql "select count(*) from flyway_schema_history where version = '900'")" -eq 0 ] || fail 'the migration is noted as done'
stop_fallow
run_fallow "$more"
wait_until_ready
[ "$(sql "select count(*) from widened")" -eq 1 ] || fail 'the migration did not run with room'
[ "$(half_written)" -eq 0 ] || fail 'something is half written'
stop_fallow
echo "migration: the start ended with code 1 and \"$said\"; nothing of it is there; with room Fallow started without it and with it"
echo 'PASSED: every refusal has its sentence, nothing is half written, nothing is stored twice'
