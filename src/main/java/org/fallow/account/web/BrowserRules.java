package org.fallow.account.web;

import org.fallow.platform.AnswerHeaders;

import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;

/**
 * What a browser is told beside the content security policy: no frame around Fallow, no
 * window or page of another site beside it, no sensor, and TLS from now on once it came
 * by TLS.
 */
final class BrowserRules {

	private static final long YEAR_SECONDS = 31_536_000;

	private BrowserRules() {
	}

	static void add(HeadersConfigurer<HttpSecurity> headers) {
		headers.frameOptions((frames) -> frames.deny());
		headers.permissionsPolicyHeader((permissions) -> permissions.policy(AnswerHeaders.PERMISSIONS));
		headers.crossOriginOpenerPolicy((opener) -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN));
		headers.crossOriginResourcePolicy((resource) -> resource.policy(CrossOriginResourcePolicy.SAME_ORIGIN));
		// a club's other sites on the same name may not have TLS
		headers.httpStrictTransportSecurity(
				(transport) -> transport.includeSubDomains(false).maxAgeInSeconds(YEAR_SECONDS));
	}

}
