package org.fallow;

import org.junit.jupiter.api.Test;

import org.springframework.modulith.core.ApplicationModules;

import static org.assertj.core.api.Assertions.assertThat;

class ModulesTest {

	private final ApplicationModules modules = ApplicationModules.of(FallowApplication.class);

	@Test
	void usesOnlyModulesBeforeIt() {
		this.modules.verify();
	}

	@Test
	void findsTheModules() {
		assertThat(this.modules.stream().map((module) -> module.getIdentifier().toString())).contains("wording",
				"access", "platform", "team", "rules", "entry", "baseline", "illness");
	}

}
