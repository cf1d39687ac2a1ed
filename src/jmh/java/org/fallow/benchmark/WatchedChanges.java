package org.fallow.benchmark;

import org.fallow.entry.TimelineChanged;
import org.jspecify.annotations.Nullable;

import org.springframework.context.ApplicationEvent;
import org.springframework.context.PayloadApplicationEvent;
import org.springframework.context.event.SimpleApplicationEventMulticaster;
import org.springframework.context.support.AbstractApplicationContext;
import org.springframework.core.ResolvableType;
import org.springframework.stereotype.Component;

/**
 * Stands between what is stored and what is assessed from it: says how long assessing
 * takes, or keeps it back, so that storing can be measured alone. In benchmarks only.
 */
@Component(AbstractApplicationContext.APPLICATION_EVENT_MULTICASTER_BEAN_NAME)
class WatchedChanges extends SimpleApplicationEventMulticaster {

	private boolean assessing = true;

	private long nanos;

	private Runnable each = () -> {
	};

	/**
	 * Begins to watch anew.
	 * @param assess whether changes are passed on
	 * @param then what is done after each, not counted as assessing
	 */
	void watch(boolean assess, Runnable then) {
		this.assessing = assess;
		this.each = then;
		this.nanos = 0;
	}

	/** Time spent on assessing since then, s. */
	double seconds() {
		return this.nanos / 1e9;
	}

	@Override
	public void multicastEvent(ApplicationEvent event, @Nullable ResolvableType type) {
		if (!(event instanceof PayloadApplicationEvent<?> carrier)
				|| !(carrier.getPayload() instanceof TimelineChanged)) {
			super.multicastEvent(event, type);
			return;
		}
		if (this.assessing) {
			long begun = System.nanoTime();
			super.multicastEvent(event, type);
			this.nanos += System.nanoTime() - begun;
		}
		this.each.run();
	}

}
