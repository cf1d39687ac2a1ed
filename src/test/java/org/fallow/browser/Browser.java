package org.fallow.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.logging.Level;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

import org.springframework.util.FileSystemUtils;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A headless Chromium for the tests of one class, with a profile of its own. A test in
 * which a page breaks the content security policy or writes an error to the console
 * fails. Without a browser the tests are skipped, which one line says; where {@code CI}
 * is {@code true} that is a failure.
 */
final class Browser implements ExecutionCondition, BeforeAllCallback, AfterEachCallback, AfterAllCallback {

	private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

	private static final String SKIPPED = "Browser tests are skipped: there is no " + DRIVER
			+ " (Debian: chromium and chromium-driver).";

	private static final AtomicBoolean SAID = new AtomicBoolean();

	private static final List<String> FLAGS = List.of("--headless=new", "--no-sandbox", "--disable-gpu",
			"--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
			"--disable-sync", "--disable-dev-shm-usage", "--hide-scrollbars", "--lang=en-GB");

	private static final String REPORT_VIOLATIONS = """
			document.addEventListener('securitypolicyviolation', (event) =>
				console.error('policy: ' + event.violatedDirective + ' ' + event.blockedURI + ' ' + event.sourceFile));
			""";

	private final List<String> expected = new ArrayList<>();

	private final Size size;

	private @Nullable Path profile;

	private @Nullable ChromeDriver driver;

	private Browser(Size size) {
		this.size = size;
	}

	/** A window as large as a telephone's. */
	static Browser phone() {
		return new Browser(Size.PHONE);
	}

	/** A window as large as a desk's. */
	static Browser desk() {
		return new Browser(Size.DESK);
	}

	@Override
	public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
		if (Files.isExecutable(DRIVER)) {
			return ConditionEvaluationResult.enabled("there is a browser");
		}
		if ("true".equals(System.getenv("CI"))) {
			throw new IllegalStateException("CI=true asks for a browser, and there is no " + DRIVER);
		}
		if (SAID.compareAndSet(false, true)) {
			System.err.println(SKIPPED);
		}
		return ConditionEvaluationResult.disabled(SKIPPED);
	}

	@Override
	public void beforeAll(ExtensionContext context) throws IOException {
		this.profile = Files.createTempDirectory("fallow-browser");
		ChromeOptions options = new ChromeOptions();
		options.addArguments(FLAGS);
		options.addArguments("--user-data-dir=" + this.profile);
		LoggingPreferences logging = new LoggingPreferences();
		logging.enable(LogType.BROWSER, Level.ALL);
		options.setCapability(ChromeOptions.LOGGING_PREFS, logging);
		ChromeDriverService service = new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile())
			.withSilent(true)
			.withEnvironment(Map.of("LANGUAGE", "en_GB"))
			.build();
		ChromeDriver started = new ChromeDriver(service, options);
		started.manage().timeouts().implicitlyWait(Duration.ofSeconds(2)).pageLoadTimeout(Duration.ofSeconds(60));
		this.driver = started;
		prepareWindow();
	}

	@Override
	public void afterEach(ExtensionContext context) {
		List<String> errors = errors();
		this.expected.clear();
		ChromeDriver open = driver();
		List<String> windows = List.copyOf(open.getWindowHandles());
		for (String window : windows.subList(1, windows.size())) {
			open.switchTo().window(window).close();
		}
		open.switchTo().window(windows.get(0));
		open.manage().deleteAllCookies();
		assertThat(errors).as("errors in the browser's console").isEmpty();
	}

	@Override
	public void afterAll(ExtensionContext context) throws IOException {
		driver().quit();
		FileSystemUtils.deleteRecursively(Objects.requireNonNull(this.profile));
	}

	/** Prepares the window that was just opened. */
	void prepareWindow() {
		driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", REPORT_VIOLATIONS));
		show(this.size);
	}

	/** Gives the window a size, to the pixel. */
	void show(Size wanted) {
		driver().executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", wanted.width(), "height",
				wanted.height(), "deviceScaleFactor", 1, "mobile", wanted == Size.PHONE));
	}

	/** Asks pages for their dark or their light look. */
	void prefer(String colorScheme) {
		driver().executeCdpCommand("Emulation.setEmulatedMedia",
				Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", colorScheme))));
	}

	/** Lets the test's console errors hold this text, such as the status of a refusal. */
	void expectError(String part) {
		this.expected.add(part);
	}

	ChromeDriver driver() {
		return Objects.requireNonNull(this.driver, "the browser is not open");
	}

	private List<String> errors() {
		return driver().manage()
			.logs()
			.get(LogType.BROWSER)
			.getAll()
			.stream()
			.filter((entry) -> entry.getLevel().intValue() >= Level.SEVERE.intValue())
			.map(LogEntry::getMessage)
			.filter((message) -> this.expected.stream().noneMatch(message::contains))
			.toList();
	}

	/** What a page is looked at on. */
	enum Size {

		PHONE(390, 844), DESK(1280, 900);

		private final int width;

		private final int height;

		Size(int width, int height) {
			this.width = width;
			this.height = height;
		}

		int width() {
			return this.width;
		}

		int height() {
			return this.height;
		}

	}

}
