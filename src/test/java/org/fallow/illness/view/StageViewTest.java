package org.fallow.illness.view;

import java.util.List;
import java.util.Locale;

import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.PublishedPaths;
import org.fallow.rules.RuleSet.Path;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import org.springframework.context.support.ResourceBundleMessageSource;

import static org.assertj.core.api.Assertions.assertThat;

class StageViewTest {

	private final ResourceBundleMessageSource messages = messages();

	@Test
	void namesOurStagesAsEver() {
		Path path = DefaultRules.ruleSet().path(PathName.THREE_WEEK);
		assertThat(StageView.all(path)).extracting((stage) -> say(stage.name()))
			.containsExactly("Stage 1 Easy, lower volume", "Stage 2 Easy, usual volume, strides",
					"Stage 3 Full training, watched");
	}

	@ParameterizedTest
	@CsvSource(delimiter = ';', value = { "ELLIOTT_2020; 1; Stage 1 Easy, 15 minutes and effort 3 of 10 at most",
			"ELLIOTT_2020; 4; Stage 4 Easy, 60 minutes and effort 4 of 10 at most",
			"ELLIOTT_2020; 5; Stage 5 Full training, watched", "SALMAN_2021; 1; Stage 1 Easy, effort 1 of 10 at most",
			"SALMAN_2021; 5; Stage 5 Full training, watched" })
	void namesStagesOfOthersByTheirFigures(Protocol protocol, int stage, String name) {
		Path path = PublishedPaths.of(protocol, PathName.LONG);
		assertThat(say(StageView.of(path, stage).name())).isEqualTo(name);
	}

	@ParameterizedTest
	@EnumSource(Protocol.class)
	void saysWatchedOfTheLastStageWhicheverProtocolItIs(Protocol protocol) {
		List<StageView> stages = StageView.all(PublishedPaths.of(protocol, PathName.LONG));
		assertThat(say(stages.get(stages.size() - 1).name())).endsWith("Full training, watched");
	}

	@Test
	void takesWhatAStageMeansFromTheRuleSet() {
		assertThat(means(DefaultRules.ruleSet().path(PathName.THREE_WEEK), 1)).containsExactly(
				"Nothing harder than easy.", "At most 50 % of the usual weekly volume.", "Effort 3 of 10 at most.",
				"Heart rate 75 % of its maximum at most.", "The first run is 30 minutes at most.",
				"No run over 60 minutes.");
		assertThat(means(DefaultRules.ruleSet().path(PathName.LONG), 1))
			.contains("Longest runs of the first days, in minutes: 15, 15, 30, 45.");
		assertThat(means(DefaultRules.ruleSet().path(PathName.LONG), 2)).contains("Easy running with a few strides.",
				"At most 75 % of the usual weekly volume.", "Effort 4 of 10 at most apart from the strides.");
	}

	@Test
	void namesIllWithoutFigures() {
		StageView ill = StageView.of(DefaultRules.ruleSet().path(PathName.SHORT), 0);
		assertThat(say(ill.name())).isEqualTo("Ill");
		assertThat(ill.means()).extracting(this::say).allMatch((sentence) -> !sentence.contains("{"));
	}

	@Test
	void endsInFullTrainingOnly() {
		for (Protocol protocol : Protocol.values()) {
			Path path = PublishedPaths.of(protocol, PathName.LONG);
			assertThat(path.stages()).filteredOn((stage) -> stage.clearance() == Clearance.FULL_TRAINING)
				.containsExactly(path.stages().get(path.stages().size() - 1));
		}
	}

	private List<String> means(Path path, int stage) {
		return StageView.of(path, stage).means().stream().map(this::say).toList();
	}

	private String say(Message message) {
		return this.messages.getMessage(message.code(), message.arguments().toArray(), Locale.ENGLISH);
	}

	private static ResourceBundleMessageSource messages() {
		ResourceBundleMessageSource source = new ResourceBundleMessageSource();
		source.setBasename("messages");
		source.setDefaultEncoding("UTF-8");
		source.setFallbackToSystemLocale(false);
		return source;
	}

}
