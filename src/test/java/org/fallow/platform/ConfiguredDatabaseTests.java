package org.fallow.platform;

import java.nio.file.Path;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

class ConfiguredDatabaseTests {

	@TempDir
	private Path folder;

	@Test
	void startsNothingOfItsOwn() throws Exception {
		Path home = this.folder.resolve("home");
		ApplicationConnection application = TestServer.shared().application();
		MigrationConnection migration = TestServer.shared().migration();
		try (FallowProcess fallow = FallowProcess.start(this.folder, "--fallow.home=" + home,
				"--spring.datasource.url=" + application.url(), "--spring.datasource.username=" + application.role(),
				"--spring.datasource.password=" + application.password(), "--spring.flyway.user=" + migration.role(),
				"--spring.flyway.password=" + migration.password())) {
			fallow.awaitStarted();
			assertThat(home).doesNotExist();
			assertThat(fallow.errors()).isEmpty();
		}
	}

}
