package org.fallow.platform.web;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Symptom;
import org.fallow.platform.web.LogOfTest.Line;
import org.fallow.team.NewAthlete;
import org.junit.jupiter.api.Test;

import jakarta.servlet.http.HttpSession;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.MethodParameter;
import org.springframework.core.StandardReflectionParameterNameDiscoverer;
import org.springframework.core.annotation.SynthesizingMethodParameter;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Addresses end up in histories, logs of proxies and screenshots; the log is read by
 * whoever runs the machine. Neither says who is ill.
 */
class NothingPersonalTests extends OverHttp {

	/**
	 * All that an address may hold apart from ids: GET parameters by route. The pages of
	 * links take the request to change the session's id, and read the session, not the
	 * address; the roll reads which answer the browser has.
	 */
	private static final Map<String, Set<String>> ALLOWED = Map.ofEntries(
			Map.entry("/board", Set.of("day", "group", "clearance")),
			Map.entry("/athletes/{id}", Set.of("day", "weeks")), Map.entry("/mornings", Set.of("weeks")),
			Map.entry("/morning", Set.of("day")), Map.entry("/import/{id}", Set.of("page")),
			Map.entry("/thread", Set.of("day")), Map.entry("/athletes/{id}/thread", Set.of("day")),
			Map.entry("/sharing", Set.of("before")), Map.entry("/reset", Set.of("anything, by java.lang.String")),
			Map.entry("/reset/{token}", Set.of("anything, by jakarta.servlet.http.HttpServletRequest")),
			Map.entry("/join/{secret}", Set.of("anything, by jakarta.servlet.http.HttpServletRequest")),
			Map.entry("/programme/{id}", Set.of("week")), Map.entry("/athletes/{id}/same", Set.of("other")),
			Map.entry("/roll",
					Set.of("day", "group", "anything, by org.springframework.web.context.request.WebRequest")));

	/** What a variable of a path may be: ids, and the secrets of links. */
	private static final Set<String> PATH_VARIABLES = Set.of("id", "teamId", "version", "token", "secret");

	/** Reads which of its own words the address ends with, and no value. */
	private static final Set<String> READ_NO_VALUES = Set.of("/sign-in", "/forgotten");

	private static final Set<Class<?>> HARMLESS = Set.of(Model.class, HttpSession.class, Locale.class);

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping mappings;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@Test
	void asksForNothingPersonalInAnAddress() {
		Map<String, Set<String>> found = new TreeMap<>();
		reading().forEach((route, method) -> {
			Set<String> names = parameters(route, method);
			if (!names.isEmpty()) {
				found.put(route, names);
			}
		});
		assertThat(found).isEqualTo(ALLOWED);
	}

	@Test
	void namesOnlyIdsInPaths() {
		Set<String> variables = new TreeSet<>();
		this.mappings.getHandlerMethods()
			.keySet()
			.stream()
			.flatMap((mapping) -> mapping.getPatternValues().stream())
			.filter((pattern) -> !pattern.startsWith("/board/faulty") && !pattern.startsWith("/session/faulty"))
			.forEach((pattern) -> Pattern.compile("\\{([^}]+)}")
				.matcher(pattern)
				.results()
				.forEach((found) -> variables.add(found.group(1))));
		assertThat(variables).isSubsetOf(PATH_VARIABLES);
	}

	@Test
	void linksToNothingPersonal() throws IOException {
		Set<String> allowed = new TreeSet<>(PATH_VARIABLES);
		allowed.add("team");
		ALLOWED.values().forEach(allowed::addAll);
		for (Path template : templates()) {
			String html = Files.readString(template);
			Pattern.compile("@\\{[^}]*?(?:\\{\\w+}[^}]*?)*\\(((?:[^()]|\\([^()]*\\))*)\\)}")
				.matcher(html)
				.results()
				.flatMap((link) -> Pattern.compile("(?:^|,)\\s*(\\w+)=").matcher(link.group(1)).results())
				.forEach((name) -> assertThat(allowed).as(template.toString()).contains(name.group(1)));
			Pattern.compile("<form[^>]*method=\"get\".*?</form>", Pattern.DOTALL)
				.matcher(html)
				.results()
				.flatMap((form) -> Pattern.compile(" name=\"([^\"]+)\"").matcher(form.group()).results())
				.forEach((name) -> assertThat(allowed).as(template.toString()).contains(name.group(1)));
		}
	}

	@Test
	void logsNothingPersonal() {
		String username = open(this.stranger.id());
		try (LogOfTest log = LogOfTest.listen()) {
			Caller caller = nobody();
			caller.get("/sign-in");
			caller.post("/sign-in", Map.of("username", username, "password", "a wrong sentence"));
			caller.post("/sign-in", Map.of("username", "somebody@elsewhere.example", "password", "x"));
			caller.signIn(username, PASSWORD);
			saveAMorning(caller);
			failInManyWays(caller, username);
			assertThat(log.all()).anyMatch((line) -> line.text().contains("500 to GET /session/faulty-{name}"))
				.anyMatch((line) -> line.text().contains("404 to GET"));
			for (String personal : personal(username)) {
				assertThat(log.all()).extracting(Line::text).noneMatch((text) -> text.contains(personal));
			}
		}
	}

	@Test
	void quotesNoRowWhenTheDatabaseRefusesOne() {
		String username = open(this.stranger.id());
		PersonId other = this.people.addAthlete(this.team.id(), NewAthlete.named("Ben Birch")).id();
		open(other);
		try (LogOfTest log = LogOfTest.listen()) {
			assertThatThrownBy(() -> CurrentPerson.runAs(other,
					() -> new TransactionTemplate(this.transactions).executeWithoutResult(
							(status) -> this.jdbc.sql("update account set username = ? where person_id = ?")
								.params(username, other.value())
								.update())))
				.rootCause()
				.isInstanceOf(SQLException.class)
				.hasMessageContaining("account_username_unique")
				.message()
				.doesNotContain(username);
			assertThat(log.all()).extracting(Line::text).noneMatch((text) -> text.contains(username));
		}
	}

	private void saveAMorning(Caller athlete) {
		String page = athlete.get("/morning").body();
		Map<String, String> morning = new LinkedHashMap<>();
		morning.put("day", "2026-03-18");
		morning.put("rhr", "57.3");
		morning.put("method", "STRAP");
		morning.put("posture", "LYING");
		morning.put("temperature", "38.7");
		morning.put("symptom." + Symptom.SORE_THROAT, "MODERATE");
		morning.put("feverMedicine", "NONE");
		morning.put("feels", "ABLE");
		morning.put("note", "aches since the wedding");
		morning.put("requestId", value(page, "requestId"));
		morning.put("revision", value(page, "revision"));
		HttpResponse<String> answer = athlete.post("/morning", morning);
		assertThat(athlete.location(answer)).as(answer.body()).isEqualTo("/today");
		morning.put("rhr", "aches fiftyseven");
		assertThat(athlete.post("/morning", morning).statusCode()).isEqualTo(200);
		morning.put("note", "aches since the wedding " + "x".repeat(600 * 1024));
		assertThat(athlete.post("/morning", morning).statusCode()).isEqualTo(413);
	}

	private void failInManyWays(Caller caller, String username) {
		String encoded = Caller.encoded(username);
		for (String path : List.of("/session/faulty-Ann-Ashe", "/session/faulty-" + encoded, "/athletes/Ann-Ashe",
				"/nowhere/" + encoded, "/morning?day=Ann-Ashe", "/board?group=Ann-Ashe", "/x//" + encoded,
				"/x;" + encoded, "/%2e%2e/Ann-Ashe", "/" + encoded + "/%00", "/today?" + encoded + "=SORE_THROAT")) {
			caller.get(path);
			caller.get(path, "Accept", "application/json");
		}
		caller.post("/morning", Map.of("symptom.SORE_THROAT", "Ann Ashe", "day", "Ann Ashe"));
		caller.post("/session", Map.of("minutes", "aches since the wedding"));
		caller.post("/report", Map.of("kind", "aches since the wedding", "worst", "SORE_THROAT"));
		caller.sendAs("POST", "/morning", BodyPublishers.ofString("Ann Ashe"), "Content-Type", "text/" + username);
		caller.sendAs("ASHE", "/morning", BodyPublishers.noBody());
		caller.get("/today", "Accept", "Ann Ashe", "Accept-Language", "Ashe", "X-Forwarded-For", "Ann Ashe");
	}

	/** The Symptom.name is what an address, a form or a message could quote. */
	private List<String> personal(String username) {
		return List.of("Ann", "Ashe", username, username.substring(0, username.indexOf('@')), Caller.encoded(username),
				"somebody@elsewhere", "SORE_THROAT", "aches", "wedding", "57.3", "38.7", "a wrong sentence", PASSWORD);
	}

	private static String value(String page, String name) {
		return Pattern
			.compile("name=\"" + name + "\"[^>]* value=\"([^\"]*)\"|value=\"([^\"]*)\"[^>]* name=\"" + name + "\"")
			.matcher(page)
			.results()
			.map((found) -> Objects.requireNonNullElse(found.group(1), found.group(2)))
			.findFirst()
			.orElseThrow();
	}

	private Map<String, HandlerMethod> reading() {
		Map<String, HandlerMethod> reading = new TreeMap<>();
		this.mappings.getHandlerMethods().forEach((mapping, method) -> {
			boolean ours = method.getBeanType().getName().startsWith("org.fallow.")
					&& !Set.of(FaultyPage.class, FailureController.class).contains(method.getBeanType());
			if (ours && isReading(mapping)) {
				mapping.getPatternValues().forEach((pattern) -> reading.put(pattern, method));
			}
		});
		return reading;
	}

	private static boolean isReading(RequestMappingInfo mapping) {
		return mapping.getMethodsCondition().getMethods().contains(RequestMethod.GET);
	}

	/** Also a parameter that is none of the known harmless kinds: it needs a look. */
	private static Set<String> parameters(String route, HandlerMethod method) {
		Set<String> names = new TreeSet<>();
		Arrays.stream(method.getMethodParameters()).forEach((parameter) -> {
			MethodParameter named = new SynthesizingMethodParameter(method.getMethod(), parameter.getParameterIndex());
			named.initParameterNameDiscovery(new StandardReflectionParameterNameDiscoverer());
			RequestParam asked = named.getParameterAnnotation(RequestParam.class);
			if (asked != null && !Map.class.isAssignableFrom(named.getParameterType())) {
				names.add(asked.value().isEmpty() ? named.getParameterName() : asked.value());
			}
			else if (asked != null || !isHarmless(route, named)) {
				names.add("anything, by " + named.getParameterType().getName());
			}
		});
		return names;
	}

	private static boolean isHarmless(String route, MethodParameter parameter) {
		Class<?> type = parameter.getParameterType();
		return HARMLESS.contains(type) || parameter.hasParameterAnnotation(PathVariable.class)
				|| type.getSimpleName().equals("SignedInPerson")
				|| type.getName().equals("jakarta.servlet.http.HttpServletResponse") || type == RedirectAttributes.class
				|| (type == WebRequest.class && READ_NO_VALUES.contains(route));
	}

	/** All but the page of components, whose forms lead nowhere. */
	private static List<Path> templates() throws IOException {
		try (Stream<Path> files = Files.walk(Path.of("src/main/resources/templates"))) {
			return files.filter((file) -> file.toString().endsWith(".html") && !file.endsWith("style.html")).toList();
		}
	}

}
