package org.fallow.platform;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.context.support.StaticMessageSource;
import org.springframework.mock.env.MockEnvironment;

import static org.assertj.core.api.Assertions.assertThat;

class ListeningTest {

	@Test
	void listensHereUnlessSomethingElseIsSaid() {
		assertThat(with().isHereByDefault()).isTrue();
		assertThat(with("server.address=").isHereByDefault()).isTrue();
		assertThat(with("fallow.proxies=10.0.0.1").isHereByDefault()).isTrue();
		assertThat(with("server.ssl.bundle=club", "server.ssl.enabled=false").isHereByDefault()).isTrue();
		assertThat(with().isOpenInTheClear()).isFalse();
	}

	@ParameterizedTest
	@ValueSource(strings = { "server.ssl.bundle=club", "server.ssl.key-store=file:fallow.p12",
			"server.ssl.certificate=certificate.pem" })
	void listensEverywhereByTls(String setting) {
		assertThat(with(setting).isHereByDefault()).isFalse();
		assertThat(with(setting, "server.address=0.0.0.0").isOpenInTheClear()).isFalse();
	}

	@Test
	void warnsOfANamedAddressWithoutTls() {
		assertThat(with("server.address=0.0.0.0").isHereByDefault()).isFalse();
		assertThat(with("server.address=0.0.0.0").isOpenInTheClear()).isTrue();
		assertThat(with("server.address=fallow.club.example").isOpenInTheClear()).isTrue();
		assertThat(with("server.address=0.0.0.0", "fallow.proxies=10.0.0.1").isOpenInTheClear()).isFalse();
		for (String here : new String[] { "127.0.0.1", "::1", "localhost" }) {
			assertThat(with("server.address=" + here).isOpenInTheClear()).isFalse();
			assertThat(with("server.address=" + here).isHereByDefault()).isFalse();
		}
	}

	private static Listening with(String... settings) {
		MockEnvironment environment = new MockEnvironment();
		for (String setting : settings) {
			int is = setting.indexOf('=');
			environment.setProperty(setting.substring(0, is), setting.substring(is + 1));
		}
		return new Listening(environment, new StaticMessageSource());
	}

}
