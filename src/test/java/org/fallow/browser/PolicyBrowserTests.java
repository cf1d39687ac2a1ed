package org.fallow.browser;

import java.util.List;
import java.util.Map;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The browser itself refuses what the content security policy forbids, on a page with
 * data: a script, a handler or a style that somebody got into the page does nothing.
 */
class PolicyBrowserTests extends OnRealPages {

	@RegisterExtension
	static final Browser BROWSER = Browser.phone();

	private static final String WATCH = """
			const done = arguments[arguments.length - 1];
			window.ran = false;
			const seen = [];
			document.addEventListener('securitypolicyviolation', (event) => seen.push(event.effectiveDirective));
			const end = () => done({ ran: window.ran, seen: seen });
			""";

	@Test
	void runsNoInlineScript() {
		Map<String, Object> result = tried("""
				const script = document.createElement('script');
				script.textContent = 'window.ran = true';
				document.body.append(script);
				""");
		assertThat(result).isEqualTo(Map.of("ran", false, "seen", List.of("script-src-elem")));
	}

	@Test
	void runsNoHandlerInAnAttribute() {
		Map<String, Object> result = tried("""
				document.body.insertAdjacentHTML('beforeend', '<img src="data:," onerror="window.ran = true">');
				""");
		assertThat(result).isEqualTo(Map.of("ran", false, "seen", List.of("script-src-attr")));
	}

	@Test
	void loadsNothingFromElsewhere() {
		Map<String, Object> result = tried("""
				const script = document.createElement('script');
				script.src = 'http://elsewhere.invalid/script.js';
				document.body.append(script);
				document.body.insertAdjacentHTML('beforeend', '<iframe src="http://elsewhere.invalid/"></iframe>');
				""");
		assertThat(result.get("ran")).isEqualTo(false);
		assertThat((List<?>) result.get("seen")).isEqualTo(List.of("script-src-elem", "frame-src"));
	}

	@SuppressWarnings("unchecked")
	private Map<String, Object> tried(String attempt) {
		BROWSER.expectError("Content Security Policy");
		BROWSER.expectError("policy: ");
		Visitor athlete = signedIn(BROWSER, this.annName);
		athlete.go("/morning");
		return (Map<String, Object>) BROWSER.driver().executeAsyncScript(WATCH + attempt + "setTimeout(end, 1000);");
	}

}
