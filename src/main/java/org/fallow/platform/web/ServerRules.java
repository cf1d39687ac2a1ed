package org.fallow.platform.web;

import java.net.InetAddress;
import java.net.UnknownHostException;

import org.apache.catalina.Context;
import org.fallow.platform.Listening;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * What holds before any filter: where the server listens, whom it believes, how many it
 * lets in at once, and how it refuses.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
class ServerRules implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

	private final Listening listening;

	private final Proxies proxies;

	private final ShortAnswer answer;

	ServerRules(Listening listening, Proxies proxies, ShortAnswer answer) {
		this.listening = listening;
		this.proxies = proxies;
		this.answer = answer;
	}

	@Override
	public void customize(TomcatServletWebServerFactory factory) {
		if (this.listening.isHereByDefault()) {
			factory.setAddress(here());
		}
		factory.addEngineValves(new Forwarded(this.proxies), new Crowd(this.answer));
		factory.addContextCustomizers(this::refuseInWords);
	}

	/** Within the framework's own valve, which then finds the answer given. */
	private void refuseInWords(Context context) {
		context.getParent().getPipeline().addValve(new ServersOwn(this.answer));
	}

	private static InetAddress here() {
		try {
			return InetAddress.getByName(Listening.HERE);
		}
		catch (UnknownHostException ex) {
			throw new IllegalStateException("a literal is never looked up", ex);
		}
	}

}
