package org.fallow.benchmark;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Facts;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Timeline;
import org.fallow.platform.SettableClock;
import org.fallow.rules.RuleSets;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The morning rush: a squad that enters its mornings all at once, into the module and
 * over HTTP, with PostgreSQL and the driver on the same machine. At the end every entry
 * that was acknowledged has to be there and the board has to say what a fold over all
 * facts from the first day on says.
 */
@Tag("benchmark")
@SpringBootTest(properties = "fallow.home=target/benchmarks/home", webEnvironment = WebEnvironment.RANDOM_PORT)
@Import(SettableClock.class)
class RushBenchmarks {

	private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);

	private static final int HISTORY_DAYS = 200;

	private static final int THREADS = Integer.getInteger("rush.threads", 8);

	private static final int ATHLETES = Integer.getInteger("rush.athletes", 1000);

	private static final int ATHLETES_OVER_HTTP = 200;

	private static final int WARM_UP_DAYS = Integer.getInteger("rush.warm-up", 4);

	private static final int DAYS = Integer.getInteger("rush.days", 6);

	private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private Facts facts;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private Squad squad;

	@Autowired
	private FlywayConnectionDetails details;

	@LocalServerPort
	private int port;

	@Test
	void moduleCalls() throws Exception {
		try (Crowd crowd = new Crowd(this.details)) {
			List<PersonId> athletes = squadWithHistory(crowd, ATHLETES);
			rush("module API", crowd, athletes, WARM_UP_DAYS, (athlete, today, random) -> {
				NewMorning morning = Crowd.morning(today, random);
				Submission submission = Submission.page(athlete, Role.ATHLETE, Ids.next());
				Saved saved = CurrentPerson.callAs(athlete, () -> this.mornings.save(athlete, morning, submission));
				assertThat(saved).isEqualTo(new Saved.Stored(today.toString(), 1, false));
				return submission.requestId();
			});
		}
	}

	@Test
	void forms() throws Exception {
		try (Crowd crowd = new Crowd(this.details)) {
			List<PersonId> athletes = squadWithHistory(crowd, ATHLETES_OVER_HTTP);
			this.accounts.open(athletes.get(0), athletes.get(0) + "@club.example", Crowd.PASSWORD);
			crowd.accounts(athletes.get(0), athletes.subList(1, athletes.size()));
			Map<PersonId, Browser> browsers = athletes.stream()
				.collect(Collectors.toMap((athlete) -> athlete, (athlete) -> new Browser(this.port, athlete)));
			ThreadLocal<FormSender> senders = ThreadLocal.withInitial(() -> sender(this.port));
			rush("HTTP", crowd, athletes, 3 * WARM_UP_DAYS, (athlete, today, random) -> {
				NewMorning morning = Crowd.morning(today, random);
				UUID request = Ids.next();
				Browser browser = browsers.get(athlete);
				String answer = senders.get().post("/morning", browser.cookie(), browser.form(morning, request));
				assertThat(answer).isEqualTo("302 /today");
				return request;
			});
		}
	}

	private List<PersonId> squadWithHistory(Crowd crowd, int count) {
		this.clock.set(FIRST);
		Report.tell("rush: %s, %d threads, %d athletes", crowd.durability(), THREADS, count);
		Team team = Crowd.team(this.people);
		List<PersonId> athletes = crowd.athletes(this.people, this.mornings, team, FIRST, HISTORY_DAYS, count);
		crowd.owner().execute("vacuum analyze");
		return athletes;
	}

	private void rush(String what, Crowd crowd, List<PersonId> athletes, int warmUp, Entry entry) throws Exception {
		double[] rates = new double[DAYS];
		double[] cpu = new double[DAYS];
		double[] database = new double[DAYS];
		double[] wal = new double[DAYS];
		List<double[]> times = new ArrayList<>();
		List<UUID> acknowledged = new ArrayList<>();
		LocalDate today = FIRST;
		for (int day = -warmUp; day < DAYS; day++) {
			today = today.plusDays(1);
			this.clock.set(today);
			double[] micros = new double[athletes.size()];
			long processor = processorNanos();
			double databaseBefore = crowd.databaseProcessorMicros();
			long walBefore = crowd.walBytes();
			long begun = System.nanoTime();
			acknowledged.addAll(atOnce(athletes, today, entry, micros));
			if (day >= 0) {
				rates[day] = athletes.size() * 1e9 / (System.nanoTime() - begun);
				cpu[day] = (processorNanos() - processor) / 1e3 / athletes.size();
				database[day] = (crowd.databaseProcessorMicros() - databaseBefore) / athletes.size();
				wal[day] = (double) (crowd.walBytes() - walBefore) / athletes.size();
				times.add(micros);
			}
		}
		double[] all = times.stream().flatMapToDouble(Arrays::stream).toArray();
		Report.tell(
				"rush, %s: %.0f/s (days: %.0f to %.0f), p50 %.1f ms, p99 %.1f ms; an entry took %.0f us of processor in Java, driver and checks with it, and %.0f us in PostgreSQL, and wrote %.0f bytes of log",
				what, Report.median(rates), Report.percentile(rates, 0.01), Report.percentile(rates, 1),
				Report.median(all) / 1e3, Report.percentile(all, 0.99) / 1e3, Report.median(cpu),
				Report.median(database), Report.median(wal));
		check(crowd, athletes, today, acknowledged);
		Report.tell("rush, %s: %d acknowledged entries are there, %d athletes on the board are right", what,
				acknowledged.size(), athletes.size());
	}

	private List<UUID> atOnce(List<PersonId> athletes, LocalDate today, Entry entry, double[] micros)
			throws Exception {
		AtomicInteger next = new AtomicInteger();
		ExecutorService threads = this.threads;
		List<Future<List<UUID>>> running = new ArrayList<>();
		for (int thread = 0; thread < THREADS; thread++) {
			Random random = new Random(today.toEpochDay() * THREADS + thread);
			running.add(threads.submit(() -> {
				List<UUID> done = new ArrayList<>();
				for (int i = next.getAndIncrement(); i < athletes.size(); i = next.getAndIncrement()) {
					long begun = System.nanoTime();
					done.add(entry.send(athletes.get(i), today, random));
					micros[i] = (System.nanoTime() - begun) / 1e3;
				}
				return done;
			}));
		}
		List<UUID> acknowledged = new ArrayList<>();
		for (Future<List<UUID>> one : running) {
			acknowledged.addAll(one.get());
		}
		return acknowledged;
	}

	private final ExecutorService threads = Executors.newFixedThreadPool(THREADS);

	private void check(Crowd crowd, List<PersonId> athletes, LocalDate today, List<UUID> acknowledged) {
		Integer there = crowd.owner()
			.queryForObject("select count(*) from morning_entry where request_id = any (?)", Integer.class,
					(Object) acknowledged.toArray(UUID[]::new));
		assertThat(there).isEqualTo(acknowledged.size());
		for (PersonId athlete : athletes) {
			CurrentPerson.runAs(athlete, () -> {
				AssessedDay board = this.assessments.status(List.of(athlete)).get(athlete).latest();
				DayAssessment lived = lived(athlete, today);
				assertThat(board.day()).isEqualTo(today);
				assertThat(board.clearance()).isEqualTo(lived.clearance());
				assertThat(board.rhrFlag()).isEqualTo(lived.rhr().flag());
				assertThat(board.rhrBaseline()).isCloseTo(lived.rhr().baseline(),
						org.assertj.core.data.Offset.offset(1e-6));
			});
		}
	}

	private DayAssessment lived(PersonId athlete, LocalDate today) {
		Timeline all = new Timeline(this.facts.of(athlete, LocalDate.EPOCH), null);
		List<DayAssessment> days = Course.of(all, this.ruleSets.bookOf(this.squad.athlete(athlete).teamId()), today);
		return days.get(days.size() - 1);
	}

	private static long processorNanos() {
		return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
			.getProcessCpuTime();
	}

	private static FormSender sender(int port) {
		try {
			return new FormSender(port);
		}
		catch (IOException ex) {
			throw new IllegalStateException(ex);
		}
	}

	/** Sends one entry and hands back the id of its sending once it is acknowledged. */
	@FunctionalInterface
	private interface Entry {

		UUID send(PersonId athlete, LocalDate today, Random random) throws IOException;

	}

	/** An athlete's browser: signed in once, with the session and token of its form. */
	private static final class Browser {

		private final String cookie;

		private final String token;

		Browser(int port, PersonId athlete) {
			CookieManager cookies = new CookieManager(null, CookiePolicy.ACCEPT_ALL);
			HttpClient client = HttpClient.newBuilder().cookieHandler(cookies).build();
			String address = "http://localhost:" + port;
			String signIn = token(send(client, HttpRequest.newBuilder(URI.create(address + "/sign-in")).GET()));
			String form = "username=" + encoded(athlete + "@club.example") + "&password=" + encoded(Crowd.PASSWORD)
					+ "&_csrf=" + encoded(signIn);
			send(client,
					HttpRequest.newBuilder(URI.create(address + "/sign-in"))
						.header("Content-Type", "application/x-www-form-urlencoded")
						.POST(HttpRequest.BodyPublishers.ofString(form)));
			this.token = token(send(client, HttpRequest.newBuilder(URI.create(address + "/morning")).GET()));
			this.cookie = cookies.getCookieStore()
				.getCookies()
				.stream()
				.map((one) -> one.getName() + "=" + one.getValue())
				.collect(Collectors.joining("; "));
		}

		private static String token(String page) {
			Matcher found = TOKEN.matcher(page);
			assertThat(found.find()).as("a form with a token").isTrue();
			return found.group(1);
		}

		private static String send(HttpClient client, HttpRequest.Builder request) {
			try {
				return client.send(request.build(), HttpResponse.BodyHandlers.ofString()).body();
			}
			catch (IOException | InterruptedException ex) {
				throw new IllegalStateException(ex);
			}
		}

		String cookie() {
			return this.cookie;
		}

		String form(NewMorning morning, UUID request) {
			return "day=" + morning.day() + "&method=STRAP&posture=LYING&rhr=" + morning.rhrBpm() + "&rmssd="
					+ String.format(java.util.Locale.ROOT, "%.1f", morning.rmssdMs())
					+ "&feverMedicine=NONE&feels=WELL&revision=0&requestId=" + request + "&_csrf="
					+ encoded(this.token);
		}

		private static String encoded(String text) {
			return URLEncoder.encode(text, StandardCharsets.UTF_8);
		}

	}

}
