package org.fallow.platform;

import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.Environment;

/**
 * Begins to start Fallow's own database as soon as the settings are known, beside
 * everything that does not need it yet. Whatever goes wrong with it is told where the
 * database would have been started otherwise. For the real start only: a test brings its
 * database along.
 */
public final class EarlyDatabase implements ApplicationContextInitializer<ConfigurableApplicationContext> {

	private static final String NAME = "earlyDatabase";

	@Override
	public void initialize(ConfigurableApplicationContext context) {
		Environment environment = context.getEnvironment();
		if (NoDatabaseConfigured.in(environment)
				&& context.getBeanFactory() instanceof DefaultListableBeanFactory beans) {
			Start start = new Start(environment);
			beans.registerSingleton(NAME, start);
			beans.registerDisposableBean(NAME, start);
			start.begin();
		}
	}

	/**
	 * A database on its way: taken once, or stopped with the application.
	 */
	static final class Start implements DisposableBean {

		private final FutureTask<OwnDatabase> task;

		private boolean taken;

		Start(Environment environment) {
			this.task = new FutureTask<>(() -> OwnDatabase.start(HomeChoice.from(environment)));
		}

		private void begin() {
			Thread thread = new Thread(this.task, "own-database");
			thread.setDaemon(true);
			thread.start();
		}

		/**
		 * Waits for the database and hands it over with the duty to close it.
		 * @throws IOException what its start failed with, as any runtime exception
		 */
		synchronized OwnDatabase take() throws IOException {
			try {
				OwnDatabase database = this.task.get();
				this.taken = true;
				return database;
			}
			catch (InterruptedException ex) {
				Thread.currentThread().interrupt();
				throw new IOException(ex);
			}
			catch (ExecutionException ex) {
				if (ex.getCause() instanceof IOException cause) {
					throw cause;
				}
				if (ex.getCause() instanceof RuntimeException cause) {
					throw cause;
				}
				throw new IllegalStateException(ex.getCause());
			}
		}

		/**
		 * Stops the database unless somebody has taken it.
		 */
		@Override
		public synchronized void destroy() throws IOException {
			if (!this.taken) {
				try {
					this.task.get().close();
				}
				catch (ExecutionException | CancellationException ex) {
					// it never ran, and its home is closed
					return;
				}
				catch (InterruptedException ex) {
					Thread.currentThread().interrupt();
				}
			}
		}

	}

}
