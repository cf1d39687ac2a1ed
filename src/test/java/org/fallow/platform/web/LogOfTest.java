package org.fallow.platform.web;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import org.slf4j.LoggerFactory;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * All that is logged while it is open, at the levels the application has.
 */
final class LogOfTest extends AppenderBase<ILoggingEvent> implements AutoCloseable {

	private final List<Line> lines = new CopyOnWriteArrayList<>();

	private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);

	static LogOfTest listen() {
		LogOfTest log = new LogOfTest();
		log.setContext(log.root.getLoggerContext());
		assertThat(log.root.isEnabledFor(Level.INFO)).isTrue();
		log.start();
		log.root.addAppender(log);
		return log;
	}

	@Override
	protected void append(ILoggingEvent event) {
		String thrown = (event.getThrowableProxy() == null) ? ""
				: ThrowableProxyUtil.asString(event.getThrowableProxy());
		this.lines.add(new Line(event.getLevel().toString(), event.getLoggerName(),
				event.getFormattedMessage() + "\n" + thrown));
	}

	List<Line> all() {
		return this.lines;
	}

	/** The one line that holds a text. */
	Line only(String part) {
		List<Line> found = this.lines.stream().filter((line) -> line.text().contains(part)).toList();
		assertThat(found).hasSize(1);
		return found.get(0);
	}

	@Override
	public void close() {
		this.root.detachAppender(this);
		stop();
	}

	record Line(String level, String logger, String text) {
	}

}
