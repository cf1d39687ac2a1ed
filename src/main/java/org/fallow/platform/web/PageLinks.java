package org.fallow.platform.web;

import java.util.List;

import org.thymeleaf.context.IExpressionContext;
import org.thymeleaf.linkbuilder.StandardLinkBuilder;
import org.thymeleaf.spring6.SpringTemplateEngine;

import org.springframework.context.annotation.Configuration;

/**
 * Looks for the digest of a static file only in links to static files. The framework
 * looks for each link of a page among all files of the class path, which for a link to an
 * athlete's page is in vain and was more than half of the work of a long board.
 */
@Configuration(proxyBeanMethods = false)
class PageLinks {

	private static final List<String> FILES = List.of("/css/", "/js/", "/images/", "/webjars/");

	PageLinks(SpringTemplateEngine engine) {
		engine.setLinkBuilder(new Builder());
	}

	static boolean isToAFile(String link) {
		return FILES.stream().anyMatch(link::contains);
	}

	private static final class Builder extends StandardLinkBuilder {

		@Override
		protected String processLink(IExpressionContext context, String link) {
			return isToAFile(link) ? super.processLink(context, link) : link;
		}

	}

}
