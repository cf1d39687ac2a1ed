package org.fallow.platform.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.access.Secret;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.Imports;
import org.fallow.illness.Merges;
import org.fallow.rules.RuleDrafts;
import org.fallow.rules.RuleSets;
import org.fallow.team.Consents;
import org.fallow.team.Invitations;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.NewPost;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Nearly two thousand tries to get in with what was made up, guessed or changed: ids in
 * addresses, links, session cookies, headers, forms. None shows a word of what it was
 * after, and none changes a row of it. Each kind ends with the one who has the right, for
 * whom the same request works.
 */
class ForgeriesTests extends OverHttp {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 18);

	private static final String NAME = "Zebedee Quill";

	private static final List<String> HERS = List.of(NAME, "a plover was calling", "47.3", "Evadne");

	/** Tables of signing in, which every try may touch. */
	private static final Set<String> MOVING = Set.of("spring_session", "spring_session_attributes", "sign_in_tries");

	private static final List<String> NO_IDS = List.of("0", "-1", "null", "me", "%27%20or%20%271%27=%271", "*",
			"..%252f..", "%7Bid%7D", "a".repeat(2000), "00000000-0000-0000-0000-000000000000",
			"ffffffff-ffff-ffff-ffff-ffffffffffff", "1-1-1-1-1");

	@Autowired
	private Posts posts;

	@Autowired
	private Consents consents;

	@Autowired
	private Invitations invitations;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Merges merges;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private RuleDrafts drafts;

	@Autowired
	private Imports imports;

	@Autowired
	private FlywayConnectionDetails owner;

	@TempDir
	private Path folder;

	private final Random random = new Random(20_261_126);

	private final Map<String, Caller> strangers = new LinkedHashMap<>();

	private PersonId target;

	private PersonId coach;

	private UUID group;

	private UUID ownGroup;

	private UUID ownTeam;

	@BeforeEach
	void makeTheTarget() {
		this.group = this.people.findOrAddGroup(this.team.id(), "Track").id();
		this.target = this.people
			.addAthlete(this.team.id(), new NewAthlete(NAME, null, null, LocalDate.of(1990, 1, 2), "Track"))
			.id();
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		NewMorning morning = NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 47.3, null);
		this.mornings.save(this.target,
				new NewMorning(TODAY, 0, morning.method(), morning.posture(), morning.rhrBpm(), null, List.of(), false,
						null, List.of(), false, morning.feverMedicine(), null, null, null, List.of(),
						"a plover was calling", null),
				Submission.page(this.target, Role.ATHLETE, UUID.randomUUID()));
		this.ownTeam = newTeam().id();
		this.ownGroup = this.people.findOrAddGroup(this.ownTeam, "Road").id();
		PersonId former = this.people.addPerson("Fay", java.time.ZoneOffset.UTC);
		UUID ended = this.posts.give(former,
				new NewPost(Post.GROUP_COACH, this.team.clubId(), this.team.id(), false, List.of(this.group), null));
		CurrentPerson.runAs(this.coach, () -> this.posts.end(ended, this.coach));
		this.strangers.put("nobody", nobody());
		this.strangers.get("nobody").get("/sign-in");
		this.strangers.put("team-mate", signedIn(
				open(this.people.addAthlete(this.team.id(), new NewAthlete("Ben", null, null, null, "Track")).id())));
		this.strangers.put("coach of another club", signedIn(open(this.people.addCoach(this.ownTeam, "Sam"))));
		this.strangers.put("former coach", signedIn(open(former)));
	}

	@Test
	void openNothingByIds() {
		Map<String, String> ids = ids();
		Map<String, String> before = hers();
		Tries tries = new Tries();
		for (String route : routesWithIds()) {
			String name = route.substring(route.indexOf('{') + 1, route.indexOf('}'));
			for (Map.Entry<String, Caller> who : this.strangers.entrySet()) {
				for (String id : forgedIds(Objects.requireNonNull(ids.get(name), route))) {
					tries.check(who.getKey() + " " + route + " " + id, sent(who.getValue(), route, name, id));
				}
			}
			for (String id : NO_IDS) {
				tries.check("no id " + route + " " + id,
						sent(this.strangers.get("coach of another club"), route, name, id));
			}
		}
		assertThat(tries.count).isGreaterThan(700);
		assertThat(tries.wrong).isEmpty();
		assertThat(hers()).isEqualTo(before);
		Caller cay = signedIn(open(this.coach));
		assertThat(sent(cay, "GET /athletes/{id}", "id", this.target.toString()).body()).contains(NAME, "47.3");
		sent(cay, "POST /athletes/{id}/decision/hold", "id", this.target.toString());
		assertThat(hers()).isNotEqualTo(before);
	}

	@Test
	void openNothingByLinks() {
		String invitation = invitation().text();
		String reset = reset();
		Map<String, String> before = hers();
		Tries tries = new Tries();
		for (String kind : List.of("join", "reset")) {
			String real = kind.equals("join") ? invitation : reset;
			for (String forged : forgedSecrets(real)) {
				Caller caller = nobody();
				HttpResponse<String> answer = caller.get("/" + kind + "/" + Caller.encoded(forged));
				if (answer.statusCode() == 302) {
					answer = caller.get("/" + kind);
					assertThat(caller.location(answer)).as(forged).isEqualTo("/join/gone");
				}
				else {
					assertThat(answer.statusCode()).as(forged).isIn(400, 404, 414);
				}
				tries.check(kind + " " + forged, answer);
			}
		}
		assertThat(tries.count).isGreaterThan(200);
		assertThat(tries.wrong).isEmpty();
		assertThat(hers()).isEqualTo(before);
		Caller invited = nobody();
		assertThat(invited.location(invited.get("/join/" + invitation))).isEqualTo("/join");
		assertThat(invited.get("/join").body()).contains("Evadne");
		Caller resetting = nobody();
		assertThat(resetting.location(resetting.get("/reset/" + reset))).isEqualTo("/reset");
	}

	@Test
	void openNothingByCookies() {
		Caller cay = signedIn(open(this.coach));
		String real = cay.cookie("SESSION").orElseThrow().getValue();
		Tries tries = new Tries();
		for (String forged : forgedCookies(real)) {
			HttpResponse<String> answer = nobody().get("/athletes/" + this.target, "Accept", Caller.BROWSER, "Cookie",
					"SESSION=" + forged);
			assertThat(nobody().location(answer)).as(forged + " " + answer.statusCode() + answer.body())
				.startsWith("/sign-in");
			tries.check("cookie " + forged, answer);
		}
		assertThat(tries.count).isGreaterThan(90);
		assertThat(tries.wrong).isEmpty();
		assertThat(
				nobody().get("/athletes/" + this.target, "Accept", Caller.BROWSER, "Cookie", "SESSION=" + real).body())
			.contains(NAME);
	}

	/** Headers by which other servers let somebody else in, or ask for something else. */
	@Test
	void openNothingByHeaders() {
		String coach = this.coach.toString();
		open(this.coach);
		String page = "/athletes/" + this.target;
		Map<String, String> before = hers();
		Tries tries = new Tries();
		for (String name : List.of("X-Forwarded-User", "X-Forwarded-Email", "X-Forwarded-For", "X-Remote-User",
				"Remote-User", "X-Authenticated-User", "X-User", "X-User-Id", "X-Role", "X-Original-URL",
				"X-Rewrite-URL", "X-Forwarded-Prefix", "X-HTTP-Method-Override", "X-Method-Override", "Authorization",
				"Forwarded", "Origin", "Referer", "X-CSRF-TOKEN", "X-Requested-With", "HX-Request", "HX-Current-URL")) {
			for (String value : List.of(coach + "@club.example", page + "/decision/hold", "POST",
					"for=127.0.0.1;host=localhost", "Basic " + base64(coach + "@club.example:" + PASSWORD),
					"Bearer " + coach)) {
				String what = name + ": " + value;
				for (Caller who : List.of(nobody(), this.strangers.get("coach of another club"))) {
					tries.check(what, who.get(page, "Accept", Caller.BROWSER, name, value));
					HttpResponse<String> sent = who.sendAs("POST", page + "/decision/hold",
							BodyPublishers.ofString("reason=it+says+so"), "Accept", Caller.BROWSER, "Content-Type",
							"application/x-www-form-urlencoded", name, value);
					assertThat(sent.statusCode()).as(what).isIn(302, 401, 403, 404);
					tries.check(what, sent);
				}
			}
		}
		assertThat(tries.count).isGreaterThan(500);
		assertThat(tries.wrong).isEmpty();
		assertThat(hers()).isEqualTo(before);
	}

	/**
	 * A form of the target's own coach in whose browser another site sends it: the cookie
	 * is right, the token is not there, whatever the headers say.
	 */
	@Test
	void sendNothingFromAnotherSite() {
		Caller cay = signedIn(open(this.coach));
		Map<String, String> before = hers();
		Tries tries = new Tries();
		for (String[] more : new String[][] { { "Origin", "https://evil.example" }, { "Origin", "null" },
				{ "Referer", "http://localhost:" + this.port + "/board" }, { "X-Requested-With", "XMLHttpRequest" },
				{ "X-CSRF-TOKEN", "" }, { "X-CSRF-TOKEN", "a".repeat(96) }, { "X-XSRF-TOKEN", "a" },
				{ "HX-Request", "true" }, { "X-HTTP-Method-Override", "GET" }, { "Sec-Fetch-Site", "same-origin" } }) {
			for (String type : List.of("application/x-www-form-urlencoded", "text/plain", "application/json")) {
				HttpResponse<String> answer = cay.sendAs("POST", "/athletes/" + this.target + "/decision/hold",
						BodyPublishers.ofString("reason=it+says+so&_method=GET"), "Accept", Caller.BROWSER,
						"Content-Type", type, more[0], more[1]);
				assertThat(answer.statusCode()).as(more[0] + " " + type).isEqualTo(403);
				tries.check(more[0] + " " + type, answer);
			}
		}
		assertThat(tries.wrong).isEmpty();
		assertThat(hers()).isEqualTo(before);
		cay.post("/athletes/" + this.target + "/decision/hold", fields());
		assertThat(hers()).as("the same form with its token").isNotEqualTo(before);
	}

	@Test
	void changeNothingByForms() {
		Map<String, String> before = hers();
		Tries tries = new Tries();
		Caller sam = this.strangers.get("coach of another club");
		Caller ben = this.strangers.get("team-mate");
		Map<String, String> foreign = new TreeMap<>(fields());
		foreign.putAll(Map.of("teamId", this.team.id().toString(), "intoTeam", this.team.id().toString(), "groupId",
				this.group.toString(), "groupIds", this.group.toString(), "clubId", this.team.clubId().toString()));
		for (String kind : List.of("HEAD_COACH", "GROUP_COACH", "DEPUTY", "ATHLETE", "OWNER", "ADMIN", "")) {
			for (String path : List.of("/people", "/people/invitations", "/club/teams", "/club/invitations")) {
				for (String team : List.of(this.team.id().toString(), this.ownTeam.toString())) {
					Map<String, String> form = new TreeMap<>(foreign);
					form.putAll(Map.of("kind", kind, "teamId", team, "intoTeam", team));
					tries.check(kind + " " + path, sam.post(path, form));
					tries.check(kind + " " + path, ben.post(path, form));
				}
			}
		}
		tries.check("import", imported(sam));
		Map<String, String> named = new TreeMap<>();
		for (String field : List.of("athleteId", "athlete", "personId", "person", "id", "actor", "actorId",
				"athlete.id", "self", "for", "as")) {
			named.put(field, this.target.toString());
		}
		for (String path : List.of("/morning", "/session", "/report", "/sharing/give", "/sharing/withdraw",
				"/account/passkeys/remove", "/account/sessions/end", "/password")) {
			for (String role : List.of("COACH", "OWNER", "CLINICIAN", "ATHLETE")) {
				Map<String, String> form = new TreeMap<>(fields());
				form.putAll(named);
				form.putAll(Map.of("role", role, "source", "IMPORT", "day", TODAY.toString()));
				if (!path.startsWith("/sharing")) {
					tries.check(path + " as " + role, ben.post(path, form));
				}
				tries.check(path + " as " + role, sam.post(path, form));
			}
		}
		assertThat(tries.count).isGreaterThan(150);
		assertThat(tries.wrong).isEmpty();
		assertThat(hers()).isEqualTo(before);
		Map<String, String> form = new TreeMap<>(foreign);
		form.put("kind", "ATHLETE");
		signedIn(open(this.coach)).post("/people/invitations", form);
		assertThat(hers()).as("the same form by the one who may").isNotEqualTo(before);
	}

	/**
	 * Whatever is told of the target's name and consent, nobody is added beside them, and
	 * nobody but they themselves writes that they agreed: by strangers not at all, and
	 * not by their own coach, once they took consent back.
	 */
	@Test
	void addNobodyAnewByNamesAndConsent() {
		List<String> names = List.of(NAME, "zebedee\u00a0 QUILL", "\u200bZebedee\u2003Quill", "Ze\u0301bedee Quill",
				"Quill, Zebedee", "Zebedee Quil", "\uff3aebedee Quill", "Zebedee\0Quill", "#" + last(this.target));
		Tries tries = new Tries();
		Map<String, String> before = hers();
		for (String name : names) {
			for (Map<String, String> form : consentForms(name)) {
				for (Caller stranger : List.of(this.strangers.get("coach of another club"),
						this.strangers.get("team-mate"), this.strangers.get("former coach"))) {
					HttpResponse<String> answer = stranger.post("/people", form);
					assertThat(answer.statusCode()).isLessThan(500);
					if (!name.equals(NAME)) {
						tries.check(name + " " + form, answer);
					}
				}
			}
		}
		assertThat(hers()).isEqualTo(before);
		CurrentPerson.runAs(this.target, () -> this.consents.withdraw(this.target));
		before = hers();
		Caller cay = signedIn(open(this.coach));
		List<String> same = names.subList(0, 4);
		for (String name : same) {
			for (Map<String, String> form : consentForms(name)) {
				HttpResponse<String> answer = cay.post("/people", form);
				assertThat(answer.statusCode()).as(name + " " + form).isEqualTo(200);
			}
			String job = uploaded(cay, name);
			cay.post(job + "/mapping", Map.of("column.PERSON", "0", "column.DAY", "1", "column.RHR", "2", "method",
					"STRAP", "posture", "LYING", "createPeople", "true"));
			cay.post(job + "/people", Map.of("createPeople", "true", "basis", "OWN_WORD", "decide." + last(this.target),
					this.target.toString()));
			assertThat(ended(job)).as(name)
				.extracting(ImportJob.Counts::rejected, ImportJob.Counts::peopleCreated)
				.containsExactly(1, 0);
		}
		assertThat(consentsOf("GIVEN")).isZero();
		assertThat(consentsOf("WITHDRAWN")).isOne();
		assertThat(mornings()).isEqualTo(1);
		assertThat(tries.count).isGreaterThan(100);
		assertThat(tries.wrong).isEmpty();
		before.keySet().removeIf((table) -> table.startsWith("import_") || table.equals("account"));
		Map<String, String> after = hers();
		after.keySet().retainAll(before.keySet());
		assertThat(after).isEqualTo(before);
	}

	private List<Map<String, String>> consentForms(String name) {
		List<Map<String, String>> forms = new ArrayList<>();
		for (String basis : List.of("OWN_WORD", "GUARDIAN_WORD", "CLUB_RECORD", "GIVEN", "STATED", "")) {
			Map<String, String> form = new TreeMap<>(Map.of("name", name, "another", name, "teamId",
					this.team.id().toString(), "birthDate", "1990-01-02", "guardian", "Uli", "guardianRole", "mother"));
			form.putAll(Map.of("basis", basis, "kind", "GIVEN", "agreed", "true", "shares", "true", "actor",
					this.target.toString()));
			forms.add(form);
		}
		return forms;
	}

	private String uploaded(Caller caller, String name) {
		HttpResponse<String> answer = imported(caller, name);
		String mapping = caller.location(answer);
		assertThat(mapping).endsWith("/mapping");
		return mapping.substring(0, mapping.lastIndexOf('/'));
	}

	private ImportJob.Counts ended(String job) {
		UUID id = UUID.fromString(job.substring(job.lastIndexOf('/') + 1));
		Supplier<ImportJob> now = () -> as(this.coach, () -> this.imports.find(id).orElseThrow());
		Awaitility.await().until(() -> now.get().state() == ImportJob.State.DONE);
		return now.get().counts();
	}

	private int consentsOf(String kind) {
		return ownersRows("select count(*) from consent where kind = '" + kind + "' and athlete_id = ?");
	}

	private int mornings() {
		return ownersRows("select count(*) from morning_entry where athlete_id = ?");
	}

	private int ownersRows(String sql) {
		return JdbcClient
			.create(new DriverManagerDataSource(this.owner.getJdbcUrl(),
					Objects.requireNonNull(this.owner.getUsername()), Objects.requireNonNull(this.owner.getPassword())))
			.sql(sql)
			.param(this.target.value())
			.query(Integer.class)
			.single();
	}

	private static String last(PersonId person) {
		return person.toString().substring(28);
	}

	/** Something of the target for each name of an id in the table of routes. */
	private Map<String, String> ids() {
		Map<String, String> ids = new TreeMap<>();
		ids.put("id", this.target.toString());
		ids.put("athlete with account", this.target.toString());
		ids.put("teamId", this.team.id().toString());
		ids.put("group", this.group.toString());
		ids.put("draft", as(this.coach,
				() -> this.drafts.start(this.ruleSets.version(this.team.id(), 1), this.coach).id().toString()));
		ids.put("job",
				as(this.coach, () -> this.imports.receive(this.team.id(), this.coach, "m.csv", file()).toString()));
		invitation();
		ids.put("invitation",
				as(this.coach, () -> this.invitations.open(List.of(this.team.id()), List.of()).get(0).id().toString()));
		ids.put("club invitation", ids.get("invitation"));
		ids.put("post",
				Purpose.OPERATION
					.call(() -> this.posts.give(this.people.addPerson("Dov", java.time.ZoneOffset.UTC), new NewPost(
							Post.GROUP_COACH, this.team.clubId(), this.team.id(), false, List.of(this.group), null)))
					.toString());
		ids.put("club post", ids.get("post"));
		UUID merge = UUID.randomUUID();
		PersonId again = Purpose.OPERATION
			.call(() -> this.people.addAthlete(this.team.id(), NewAthlete.named("Again")).id());
		assertThat(as(this.coach, () -> this.merges.merge(this.target, again, "the same", merge)))
			.isInstanceOf(Saved.Stored.class);
		ids.put("merge", merge.toString());
		return ids;
	}

	private Secret invitation() {
		NewInvitation offer = new NewInvitation(null, this.team.clubId(), this.team.id(), "Evadne", null,
				List.of(this.group), false, null);
		return as(this.coach, () -> this.invitations.make(offer, this.coach).orElseThrow());
	}

	private String reset() {
		this.accounts.open(this.target, this.target + "@club.example", PASSWORD);
		String link = Purpose.OPERATION.call(() -> this.accounts.resetLink(this.target));
		return link.substring(link.lastIndexOf('/') + 1);
	}

	private Path file() {
		try {
			return Files.writeString(Files.createTempFile(this.folder, "m", ".csv"),
					"person,date,rhr_bpm\nEvadne,2026-01-01,47.3\n");
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private HttpResponse<String> imported(Caller caller) {
		return imported(caller, NAME);
	}

	private HttpResponse<String> imported(Caller caller, String name) {
		String body = "--b\r\nContent-Disposition: form-data; name=\"_csrf\"\r\n\r\n" + caller.token()
				+ "\r\n--b\r\nContent-Disposition: form-data; name=\"teamId\"\r\n\r\n" + this.team.id()
				+ "\r\n--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"m.csv\"\r\n"
				+ "Content-Type: text/csv\r\n\r\nperson,date,rhr_bpm\n" + name + ",2026-03-18,52\r\n--b--\r\n";
		return caller.sendAs("POST", "/import", BodyPublishers.ofString(body), "Accept", Caller.BROWSER, "Content-Type",
				"multipart/form-data; boundary=b");
	}

	/** The id itself, in capitals, and neighbours of it. */
	private List<String> forgedIds(String id) {
		UUID real = UUID.fromString(id);
		Set<String> forged = new TreeSet<>();
		forged.add(id);
		forged.add(id.toUpperCase(java.util.Locale.ROOT));
		forged.add(new UUID(real.getMostSignificantBits(), real.getLeastSignificantBits() + 1).toString());
		forged.add(new UUID(real.getMostSignificantBits(),
				real.getLeastSignificantBits() ^ (1L << this.random.nextInt(61)))
			.toString());
		return List.copyOf(forged);
	}

	private Set<String> forgedSecrets(String real) {
		Set<String> forged = new TreeSet<>(List.of(new Secret(real).hash(), real + "A", "A" + real, real.substring(1),
				real.substring(0, real.length() - 1), real + "=", real + "\u0000",
				real.toUpperCase(java.util.Locale.ROOT), real.toLowerCase(java.util.Locale.ROOT),
				new StringBuilder(real).reverse().toString(), "x", "'", real + "'--", real.replace(real.charAt(3), '.'),
				Base64.getEncoder().encodeToString(real.getBytes(StandardCharsets.UTF_8)), "A".repeat(5000)));
		while (forged.size() < 60) {
			int at = this.random.nextInt(real.length());
			char other = (char) ('a' + this.random.nextInt(26));
			forged.add(real.substring(0, at) + other + real.substring(at + 1));
		}
		while (forged.size() < 120) {
			forged.add(Secret.draw().text());
		}
		forged.remove(real);
		return forged;
	}

	/**
	 * A blank after the whole id is not among them: whoever knows the id has the session.
	 */
	private Set<String> forgedCookies(String real) {
		String id = new String(Base64.getDecoder().decode(real), StandardCharsets.UTF_8);
		Set<String> forged = new TreeSet<>(List.of("x", id, base64(id.toUpperCase(java.util.Locale.ROOT)),
				base64("' or '1'='1"), base64(this.coach.toString()), real + real, "null"));
		while (forged.size() < 100) {
			int at = this.random.nextInt(id.length());
			forged.add(base64(id.substring(0, at) + ((id.charAt(at) == '0') ? '1' : '0') + id.substring(at + 1)
					+ this.random.ints(this.random.nextInt(2), 0, 10)
						.mapToObj(String::valueOf)
						.reduce("", String::concat)));
		}
		forged.remove(real);
		return forged;
	}

	private static String base64(String text) {
		return Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
	}

	private HttpResponse<String> sent(Caller caller, String route, String name, String id) {
		String path = route.substring(route.indexOf(' ') + 1).replace("{" + name + "}", id).replace("{version}", "1");
		return route.startsWith("GET") ? caller.get(path) : caller.post(path, fields());
	}

	/** What any form of an athlete's or coach's page needs to be taken. */
	private static Map<String, String> fields() {
		Map<String, String> fields = new TreeMap<>();
		fields.putAll(Map.of("reason", "it says so", "ceiling", "REST", "until", TODAY.plusDays(3).toString(), "who",
				"Dr Vale", "role", "GP", "word", "all is well", "scope", "FULL", "from", TODAY.toString(), "requestId",
				UUID.randomUUID().toString(), "day", TODAY.toString()));
		fields.putAll(Map.of("name", "Uli", "zone", "UTC", "basis", "CLUB_RECORD", "whom", "Evan", "lastDay",
				TODAY.plusDays(3).toString(), "birthDate", "1990-01-01", "minutes", "30", "onset", TODAY.toString(),
				"kind", "COVID", "by", "PHYSICIAN"));
		return fields;
	}

	private static Set<String> routesWithIds() {
		Set<String> routes = new TreeSet<>();
		try (InputStream file = Objects.requireNonNull(ForgeriesTests.class.getResourceAsStream("/access-matrix.csv"));
				CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(file)) {
			csv.stream()
				.map((row) -> row.getField("route"))
				.filter((route) -> route.contains("{") && !route.contains("{token}") && !route.contains("{secret}"))
				.forEach(routes::add);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return routes;
	}

	/**
	 * Every row that speaks of the target, their team or their club, read as the owner of
	 * the tables.
	 */
	private Map<String, String> hers() {
		JdbcClient jdbc = JdbcClient.create(new DriverManagerDataSource(this.owner.getJdbcUrl(),
				Objects.requireNonNull(this.owner.getUsername()), Objects.requireNonNull(this.owner.getPassword())));
		String ids = String.join("|", this.target.toString(), this.team.id().toString(), this.team.clubId().toString(),
				this.group.toString());
		Map<String, String> rows = new TreeMap<>();
		for (String table : jdbc
			.sql("select c.relname from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in "
					+ "('r', 'p')")
			.query(String.class)
			.list()) {
			if (!MOVING.contains(table)) {
				rows.put(table, jdbc
					.sql("select count(*) || ' ' || coalesce(md5(string_agg(t::text, '/' order by t::text)), '')"
							+ " from " + table + " t where t::text ~ ?")
					.param(ids)
					.query(String.class)
					.single());
			}
		}
		return rows;
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

	private static final class Tries {

		private final List<String> wrong = new ArrayList<>();

		private int count;

		void check(String what, HttpResponse<String> answer) {
			this.count++;
			if (answer.statusCode() >= 500 || HERS.stream().anyMatch(answer.body()::contains)) {
				this.wrong.add(answer.statusCode() + " " + what);
			}
		}

	}

}
