package org.fallow.platform.web;

import org.fallow.platform.StartFailure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class ProxiesTest {

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "10.0.0.0/8|10.255.0.1|true", "10.0.0.0/8|11.0.0.1|false", "10.1.2.3|10.1.2.3|true",
					"10.1.2.3|10.1.2.4|false", "10.1.2.128/25|10.1.2.127|false", "10.1.2.128/25|10.1.2.200|true",
					"0.0.0.0/0|203.0.113.9|true", "0.0.0.0/0|::1|false", "::/0|::ffff:10.0.0.1|false",
					"2001:db8::/33|2001:db8:7fff::1|true", "2001:db8::/33|2001:db8:8000::1|false",
					"127.0.0.1, ::1|::1|true", "127.0.0.1 ::1|127.0.0.1|true", "127.0.0.1|::ffff:127.0.0.1|true",
					"127.0.0.1|unknown|false" })
	void holdsWhoIsNamed(String setting, String address, boolean held) {
		assertThat(new Proxies(setting).hold(address)).isEqualTo(held);
	}

	@Test
	void holdsNobodyUnlessNamed() {
		Proxies none = new Proxies(" ");
		assertThat(none.areNamed()).isFalse();
		assertThat(none.hold("127.0.0.1")).isFalse();
		assertThat(none.hold("10.0.0.1")).isFalse();
		assertThat(none.hold((String) null)).isFalse();
	}

	@ParameterizedTest
	@ValueSource(strings = { "proxy.club.example", "10.0.0.0/33", "10.0.0/8", "::1/129", "10.0.0.0/", "10.0.0.0/-1",
			"10.0.0.0/8/8", ".*", "127.0.0.1,any" })
	void saysWhichSettingCannotBeRead(String setting) {
		assertThatThrownBy(() -> new Proxies(setting)).isInstanceOf(StartFailure.class)
			.extracting((failure) -> ((StartFailure) failure).sentence())
			.asString()
			.contains("fallow.proxies", "127.0.0.1 or 10.0.0.0/8");
	}

}
