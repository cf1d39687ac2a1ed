package org.fallow.exchange.imports;

import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;

import org.fallow.platform.DatabaseState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

import org.springframework.jdbc.UncategorizedSQLException;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.eq;
import static org.mockito.BDDMockito.given;
import static org.mockito.BDDMockito.willDoNothing;
import static org.mockito.BDDMockito.willThrow;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;

/** An import in the middle of which the disk fills, or the database goes away. */
@Timeout(60)
@SuppressWarnings("NullAway.Init")
class ImportWorkerTest {

	private static final UUID ID = UUID.randomUUID();

	private final Imports imports = mock();

	private final ImportRun run = mock();

	private final ImportJob job = mock();

	private final DatabaseState database = mock();

	private final ImportWorker worker = new ImportWorker(this.imports, this.run, this.database);

	@BeforeEach
	void haveARunningJob() {
		given(this.job.state()).willReturn(ImportJob.State.RUNNING);
		given(this.imports.find(ID)).willReturn(Optional.of(this.job));
	}

	@Test
	void goesOnWhenThereIsRoomAgain() {
		willThrow(failure("53100")).willDoNothing().given(this.run).run(eq(this.job), any());
		this.worker.runNow(ID);
		verify(this.run, times(2)).run(eq(this.job), any());
		verify(this.database).refusedForWantOfRoom();
	}

	@Test
	void goesOnWhenTheDatabaseIsBack() {
		willDoNothing().given(this.run).run(eq(this.job), any());
		given(this.imports.find(ID)).willThrow(failure("08006")).willReturn(Optional.of(this.job));
		this.worker.runNow(ID);
		verify(this.run, times(1)).run(eq(this.job), any());
		verify(this.database, never()).refusedForWantOfRoom();
	}

	@Test
	void stopsWithFallowWhileItWaits() throws InterruptedException {
		willThrow(failure("53100")).given(this.run).run(eq(this.job), any());
		Thread waiting = new Thread(() -> this.worker.runNow(ID));
		waiting.start();
		this.worker.destroy();
		waiting.join(20_000);
		assertThat(waiting.isAlive()).isFalse();
	}

	@Test
	void waitsForNothingElse() {
		willThrow(new IllegalStateException("broken")).given(this.run).run(eq(this.job), any());
		assertThatIllegalStateException().isThrownBy(() -> this.worker.runNow(ID));
	}

	private static RuntimeException failure(String state) {
		return new UncategorizedSQLException("import", null, new SQLException("no", state));
	}

}
