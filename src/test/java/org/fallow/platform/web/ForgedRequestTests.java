package org.fallow.platform.web;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * No page of another site can send a form of Fallow: each needs the token of the session
 * that sends it. The routes are asked of the application, so a new one is in.
 */
class ForgedRequestTests extends OverHttp {

	private static final Set<RequestMethod> READING = Set.of(RequestMethod.GET, RequestMethod.HEAD,
			RequestMethod.OPTIONS, RequestMethod.TRACE);

	/** Answered by the security filters, hence not among the mappings. */
	private static final List<Route> OF_FILTERS = List.of(new Route("POST", "/sign-out"));

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping mappings;

	@Autowired
	private Posts posts;

	@Test
	void refusesEveryWriteWithoutTheTokenOfItsSession() {
		Caller own = everybody();
		Caller other = everybody();
		Set<Route> routes = writing();
		assertThat(routes).hasSizeGreaterThan(15);
		for (Route route : routes) {
			assertThat(sent(own, route, "").statusCode()).as("without a token: %s", route).isEqualTo(403);
			assertThat(sent(own, route, other.token()).statusCode()).as("another session's token: %s", route)
				.isEqualTo(403);
		}
	}

	/**
	 * Or the test above would find refusals that have another reason. What ends the
	 * session itself is left out.
	 */
	@Test
	void refusesNoWriteWithTheToken() {
		Caller own = everybody();
		for (Route route : writing()) {
			if (!OF_FILTERS.contains(route) && !route.path().startsWith("/account/sessions")) {
				assertThat(sent(own, route, own.token()).statusCode()).as("with the token: %s", route)
					.isNotEqualTo(403);
			}
		}
	}

	@Test
	void signsNobodyInWithoutTheToken() {
		Caller caller = nobody();
		HttpResponse<String> answer = caller.sendAs("POST", "/sign-in",
				BodyPublishers.ofString("username=" + this.coachName + "&password=" + PASSWORD.replace(" ", "+")),
				"Content-Type", "application/x-www-form-urlencoded");
		assertThat(caller.location(answer)).isEqualTo("/sign-in?expired");
		assertThat(caller.get("/board").statusCode()).isEqualTo(302);
	}

	/**
	 * Thymeleaf adds the token to forms with th:action; htmx would need a header. The one
	 * form without is what was sent while the database was gone, its own token among it:
	 * a new one would need the session.
	 */
	@Test
	void hasNoFormAndNoHtmxRequestThatWouldLackTheToken() throws IOException {
		for (Path template : templates()) {
			String html = Files.readString(template);
			assertThat(html).as(template.toString()).doesNotContainPattern("hx-(post|put|patch|delete)");
			assertThat(html.replaceAll(
					"<form[^>]*method=\"get\"|<form[^>]*data-passkey=|<form(?=[^>]*method=\"post\")(?=[^>]*th:action=)"
							+ "|<form(?=[^>]*th:if=\"\\$\\{sent != null}\")(?=[^>]*action=\\$\\{sent\\.action})",
					""))
				.as(template.toString())
				.doesNotContain("<form");
		}
	}

	private static List<Path> templates() throws IOException {
		try (Stream<Path> files = Files.walk(Path.of("src/main/resources/templates"))) {
			return files.filter((file) -> file.toString().endsWith(".html")).toList();
		}
	}

	private static HttpResponse<String> sent(Caller caller, Route route, String token) {
		return caller.sendAs(route.method(), route.path(), BodyPublishers.ofString("_csrf=" + Caller.encoded(token)),
				"Content-Type", "application/x-www-form-urlencoded", "Accept", Caller.BROWSER);
	}

	private Set<Route> writing() {
		Set<Route> routes = this.mappings.getHandlerMethods()
			.entrySet()
			.stream()
			.filter((entry) -> entry.getValue().getBeanType().getName().startsWith("org.fallow."))
			.filter((entry) -> !entry.getValue().getBeanType().equals(FailureController.class))
			.map(Map.Entry::getKey)
			.flatMap((mapping) -> routes(mapping).stream())
			.collect(Collectors.toCollection(LinkedHashSet::new));
		routes.addAll(OF_FILTERS);
		return routes;
	}

	private static Collection<Route> routes(RequestMappingInfo mapping) {
		Set<RequestMethod> methods = mapping.getMethodsCondition().getMethods();
		assertThat(methods).as("methods of " + mapping).isNotEmpty();
		return mapping.getPatternValues()
			.stream()
			.flatMap((pattern) -> methods.stream()
				.filter((method) -> !READING.contains(method))
				.map((method) -> new Route(method.name(),
						pattern.replaceAll("\\{version}", "1").replaceAll("\\{[^}]+}", UUID.randomUUID().toString()))))
			.toList();
	}

	/** Somebody whose place opens every route: athlete, head coach and owner in one. */
	private Caller everybody() {
		Athlete athlete = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
		PersonId person = athlete.id();
		this.posts.give(person,
				new NewPost(Post.HEAD_COACH, this.team.clubId(), this.team.id(), true, List.of(), null));
		this.posts.give(person, new NewPost(Post.OWNER, this.team.clubId(), null, false, List.of(), null));
		return signedIn(open(person));
	}

	private record Route(String method, String path) {
	}

}
