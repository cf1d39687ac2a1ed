package org.fallow.benchmark;

import java.util.Map;
import java.util.TreeMap;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * How many athlete-days a second one core decides, and how much each allocates.
 * {@code mvn test -Pbenchmarks -Dtest=CoreBenchmarks}; about four minutes. With
 * {@code -Dbenchmark.quick=true} one fork of short rounds, for a first look.
 */
@Tag("benchmark")
class CoreBenchmarks {

	@Test
	void tellsAthleteDaysASecond() throws RunnerException {
		OptionsBuilder options = new OptionsBuilder();
		options.include(CoreLoops.class.getName()).addProfiler(GCProfiler.class).shouldFailOnError(true);
		if (Boolean.getBoolean("benchmark.quick")) {
			options.forks(1).warmupIterations(3).measurementIterations(3).measurementTime(TimeValue.seconds(1));
		}
		Map<String, Double> perSecond = new TreeMap<>();
		double days = (double) CoreLoops.ATHLETES * CoreLoops.DAYS;
		for (RunResult run : new Runner(options.build()).run()) {
			String name = run.getPrimaryResult().getLabel();
			perSecond.put(name, run.getPrimaryResult().getScore() * days);
			Result<?> bytes = run.getSecondaryResults().get("gc.alloc.rate.norm");
			Report.tell("core %s: %.0f athlete-days/s (+- %.0f %%), %.0f bytes allocated a day", name,
					perSecond.get(name),
					100 * run.getPrimaryResult().getScoreError() / run.getPrimaryResult().getScore(),
					bytes.getScore() / days);
		}
		Report.tell("core kernel / library: %.1f", perSecond.get("kernel") / perSecond.get("library"));
	}

}
