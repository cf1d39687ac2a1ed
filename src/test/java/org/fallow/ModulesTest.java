package org.fallow;

import java.util.Set;

import org.junit.jupiter.api.Test;

import org.springframework.modulith.core.ApplicationModules;

import static org.assertj.core.api.Assertions.assertThat;

class ModulesTest {

	private static final Set<String> LEAVES = Set.of("wording", "platform");

	private final ApplicationModules modules = ApplicationModules.of(FallowApplication.class);

	@Test
	void usesOnlyModulesBeforeIt() {
		this.modules.verify();
	}

	/**
	 * A package-info among the tests hides the module's own and with it what the module
	 * may use: everything would pass.
	 */
	@Test
	void readsWhatEachModuleMayUse() {
		assertThat(this.modules.stream()
			.filter((module) -> !LEAVES.contains(module.getIdentifier().toString()))
			.filter((module) -> module.getAllowedDependencies(this.modules).isEmpty())).isEmpty();
	}

	@Test
	void findsTheModules() {
		assertThat(this.modules.stream().map((module) -> module.getIdentifier().toString())).contains("wording",
				"access", "platform", "team", "rules", "entry", "baseline", "illness", "training", "contact");
	}

}
