package org.fallow.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.postgresql.util.PSQLException;
import org.postgresql.util.PSQLState;

import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.mock.env.MockEnvironment;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What a start says of Fallow's own database that went away in the middle of it.
 */
class DatabaseFailureAnalyzerTest {

	@TempDir
	private Path home;

	@Test
	void saysThatTheDiskIsFullWhereTheDatabaseEndedForWantOfRoom() throws IOException {
		Files.writeString(this.home.resolve("database.log"),
				"PANIC:  could not write to file \"pg_wal/xlogtemp.7\": No space left on device\n");
		assertThat(said()).contains("is full").contains(this.home.toString()).doesNotContain("database.log");
	}

	@Test
	void pointsToTheLogOtherwise() throws IOException {
		Files.write(this.home.resolve("database.log"), new byte[] { 'g', 'o', 'n', 'e', (byte) 0xe4, '\n' });
		assertThat(said()).contains("did not start").contains("database.log");
	}

	@Test
	void pointsToTheLogThatIsNotThere() {
		assertThat(said()).contains("did not start").contains("database.log");
	}

	private String said() {
		MockEnvironment environment = new MockEnvironment().withProperty("fallow.home", this.home.toString());
		PSQLException away = new PSQLException("This connection has been closed.", PSQLState.CONNECTION_DOES_NOT_EXIST);
		FailureAnalysis analysis = new DatabaseFailureAnalyzer(environment).analyze(away, away);
		assertThat(analysis).isNotNull();
		return analysis.getDescription();
	}

}
