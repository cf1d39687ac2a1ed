package org.fallow;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.entry.Saved;
import org.fallow.exchange.imports.Imports;
import org.fallow.illness.Merges;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.rules.RuleDrafts;
import org.fallow.rules.RuleSets;
import org.fallow.team.Invitations;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

/**
 * Every route for everybody, as src/test/resources/access-matrix.csv says: {@code ok}
 * lets in (a form may still be refused for what it holds), {@code no} answers as if there
 * were nothing (404) or that it is not theirs (403), {@code sign-in} asks who it is. The
 * ids of a route belong to the team of self; a route without a row fails.
 */
@DatabaseTest
@NobodyOperates
class AccessMatrixTests {

	private static final String PASSWORD = "a long enough sentence";

	@Autowired
	private MockMvc mvc;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping mappings;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Invitations invitations;

	@Autowired
	private Accounts accounts;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private RuleDrafts drafts;

	@Autowired
	private Imports imports;

	@Autowired
	private Merges merges;

	@Autowired
	private UserDetailsService users;

	@TempDir
	private Path folder;

	private final Map<String, @Nullable UserDetails> everybody = new LinkedHashMap<>();

	private Team team;

	private UUID track;

	private PersonId self;

	private PersonId head;

	private PersonId owner;

	private PersonId fileOnly;

	@BeforeEach
	void makeEverybody() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		Team other = this.people.addTeam(club, "Other", ZoneOffset.UTC);
		this.track = this.people.findOrAddGroup(this.team.id(), "Track").id();
		UUID road = this.people.findOrAddGroup(this.team.id(), "Road").id();
		this.self = athlete("Self", "Track");
		this.fileOnly = athlete("File", "Track");
		this.head = this.people.addCoach(this.team.id(), "Head");
		this.owner = staff("Owner", new NewPost(Post.OWNER, club, null, false, List.of(), null));
		PersonId former = this.people.addPerson("Former", ZoneOffset.UTC);
		UUID ended = this.posts.give(former, groups(Post.GROUP_COACH, this.track, null));
		this.everybody.put("nobody", null);
		put("self", this.self);
		put("other athlete", athlete("Other", "Track"));
		put("coach of the group", staff("Gus", groups(Post.GROUP_COACH, this.track, null)));
		put("coach of another group", staff("Ria", groups(Post.GROUP_COACH, road, null)));
		put("coach of another team", this.people.addCoach(other.id(), "Ola"));
		put("deputy", staff("Del", groups(Post.DEPUTY, this.track, Instant.now().plus(Duration.ofDays(3)))));
		put("head coach", this.head);
		put("owner", this.owner);
		put("former coach", former);
		CurrentPerson.runAs(this.head, () -> this.posts.end(ended, this.head));
	}

	@Test
	void hasARowForEveryRoute() {
		Set<String> rows = new TreeSet<>();
		rows().forEach((row) -> rows.add(shape(row.getField("route"))));
		assertThat(rows).isEqualTo(routes());
	}

	@Test
	void holdsForEverybody() throws Exception {
		List<String> wrong = new ArrayList<>();
		int checked = 0;
		for (NamedCsvRecord row : rows()) {
			for (Map.Entry<String, @Nullable UserDetails> who : this.everybody.entrySet()) {
				String outcome = outcome(row.getField("route"), who.getValue());
				checked++;
				if (!outcome.equals(row.getField(who.getKey()))) {
					wrong.add(row.getField("route") + " for " + who.getKey() + ": " + outcome + " instead of "
							+ row.getField(who.getKey()));
				}
			}
		}
		assertThat(wrong).isEmpty();
		assertThat(checked).isEqualTo(rows().size() * this.everybody.size());
	}

	private String outcome(String route, @Nullable UserDetails who) throws Exception {
		String path = route.substring(route.indexOf(' ') + 1);
		for (String variable : List.of("id", "teamId", "version", "draft", "job", "invitation", "post",
				"club invitation", "club post", "athlete with account", "group", "merge", "token", "secret")) {
			if (path.contains("{" + variable + "}")) {
				String value = path.startsWith("/people/{id}") ? this.fileOnly.toString() : value(variable);
				path = path.replace("{" + variable + "}", value);
			}
		}
		MockHttpServletRequestBuilder asked = request(HttpMethod.valueOf(route.substring(0, route.indexOf(' '))), path)
			.param("clubId", this.team.clubId().toString())
			.with(csrf());
		MockHttpServletResponse answer = this.mvc.perform((who == null) ? asked : asked.with(user(who)))
			.andReturn()
			.getResponse();
		assertThat(answer.getStatus()).as(route).isLessThan(500);
		if (answer.getStatus() == 403 || answer.getStatus() == 404) {
			return "no";
		}
		String to = answer.getRedirectedUrl();
		return (to != null && to.endsWith("/sign-in") && !path.startsWith("/reset")) ? "sign-in" : "ok";
	}

	/** Something of the team of self, new for each request that may use it up. */
	private String value(String variable) {
		return switch (variable) {
			case "id", "athlete with account" -> this.self.toString();
			case "teamId" -> this.team.id().toString();
			case "group" -> this.track.toString();
			case "merge" -> merge().toString();
			case "version" -> "1";
			case "draft" ->
				as(this.head, () -> this.drafts.start(this.ruleSets.version(this.team.id(), 1), this.head).id())
					.toString();
			case "job" ->
				as(this.head, () -> this.imports.receive(this.team.id(), this.head, "m.csv", file())).toString();
			case "invitation" -> invitation(this.head,
					new NewInvitation(null, this.team.clubId(), this.team.id(), "Eve", null, List.of(), false, null),
					List.of(this.team.id()), List.of());
			case "club invitation" -> invitation(this.owner,
					new NewInvitation(Post.OWNER, this.team.clubId(), null, "Eve", null, List.of(), false, null),
					List.of(), List.of(this.team.clubId()));
			case "post", "club post" ->
				Purpose.OPERATION.call(() -> this.posts.give(this.people.addPerson("Dov", ZoneOffset.UTC),
						groups(Post.GROUP_COACH, this.track, null)))
					.toString();
			default -> "x".repeat(43);
		};
	}

	/** Another entry of self, made part of it. */
	private UUID merge() {
		UUID id = UUID.randomUUID();
		PersonId again = Purpose.OPERATION.call(() -> athlete("Self again", "Track"));
		Saved saved = as(this.head, () -> this.merges.merge(this.self, again, "the same", id));
		assertThat(saved).isInstanceOf(Saved.Stored.class);
		return id;
	}

	private String invitation(PersonId by, NewInvitation offer, List<UUID> teams, List<UUID> clubs) {
		return as(by, () -> {
			assertThat(this.invitations.make(offer, by)).isPresent();
			return this.invitations.open(teams, clubs).get(0).id().toString();
		});
	}

	private Path file() {
		try {
			return Files.writeString(Files.createTempFile(this.folder, "m", ".csv"),
					"person,date,rhr_bpm\nEve,2026-01-01,50\n");
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private Set<String> routes() {
		Set<String> routes = new TreeSet<>();
		this.mappings.getHandlerMethods().forEach((mapping, method) -> {
			String type = method.getBeanType().getName();
			if (type.startsWith("org.fallow.") && !type.startsWith("org.fallow.platform.")) {
				for (RequestMethod verb : mapping.getMethodsCondition().getMethods()) {
					mapping.getPatternValues().forEach((pattern) -> routes.add(shape(verb + " " + pattern)));
				}
			}
		});
		return routes;
	}

	private static String shape(String route) {
		return route.replaceAll("\\{[^}]+}", "{}");
	}

	private static List<NamedCsvRecord> rows() {
		try (InputStream file = Objects
			.requireNonNull(AccessMatrixTests.class.getResourceAsStream("/access-matrix.csv"));
				CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(file)) {
			return csv.stream().toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private NewPost groups(Post kind, UUID group, @Nullable Instant until) {
		return new NewPost(kind, this.team.clubId(), this.team.id(), false, List.of(group), until);
	}

	private PersonId staff(String name, NewPost post) {
		PersonId person = this.people.addPerson(name, ZoneOffset.UTC);
		this.posts.give(person, post);
		return person;
	}

	private PersonId athlete(String name, String group) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, null, LocalDate.of(1990, 1, 2), group))
			.id();
	}

	private void put(String who, PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, PASSWORD);
		this.everybody.put(who, Purpose.SIGN_IN.call(() -> this.users.loadUserByUsername(username)));
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

}
