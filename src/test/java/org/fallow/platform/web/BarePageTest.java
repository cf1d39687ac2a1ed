package org.fallow.platform.web;

import java.util.Map;

import org.junit.jupiter.api.Test;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;

import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockServletContext;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The page of Fallow's own faults is made of its template and the messages alone: no
 * bean, no session and no database are there to ask, as after the fault of one of them.
 */
class BarePageTest {

	@Test
	void needsNothingThatMayHaveFailed() {
		ClassLoaderTemplateResolver templates = new ClassLoaderTemplateResolver();
		templates.setPrefix("templates/");
		templates.setSuffix(".html");
		ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
		messages.setBasename("messages");
		SpringTemplateEngine engine = new SpringTemplateEngine();
		engine.setTemplateResolver(templates);
		engine.setTemplateEngineMessageSource(messages);
		WebContext context = new WebContext(JakartaServletWebApplication.buildApplication(new MockServletContext())
			.buildExchange(new MockHttpServletRequest(), new MockHttpServletResponse()));
		context.setVariables(Map.of("told", 500, "quote", "an-id", "megabytes", 50, "kilobytes", 512));
		assertThat(engine.process("error/bare", context)).contains("<main")
			.contains("an-id")
			.contains(messages.getMessage("error.500.text", null, java.util.Locale.ENGLISH))
			.doesNotContain("??");
	}

}
