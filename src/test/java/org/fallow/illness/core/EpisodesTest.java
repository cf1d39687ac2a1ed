package org.fallow.illness.core;

import java.util.List;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

/**
 * Episodes as they were beside those under other rules.
 */
class EpisodesTest {

	/** Opened on a day, full training on another or not yet, closed a week later. */
	private static Lived lived(int opened, Integer full) {
		return new Lived(Story.day(opened), Story.day(opened + 2), (full == null) ? null : Story.day(full),
				(full == null) ? null : Story.day(full + 7), Story.day((full == null) ? opened + 30 : full + 7));
	}

	@Test
	void pairsWhatOverlaps() {
		Lived first = lived(0, 10);
		Lived second = lived(40, 50);
		Lived sooner = lived(1, 8);
		Lived later = lived(41, 60);
		assertThat(Episodes.paired(List.of(first, second), List.of(sooner, later)))
			.containsExactly(new Episodes(first, sooner), new Episodes(second, later));
	}

	@Test
	void pairsWhatOverlapsOnOneDay() {
		Lived was = lived(0, 10);
		assertThat(was.last()).isEqualTo(Story.day(17));
		assertThat(Episodes.paired(List.of(was), List.of(lived(17, 20)))).hasSize(1);
		assertThat(Episodes.paired(List.of(was), List.of(lived(18, 20)))).hasSize(2);
		assertThat(Episodes.paired(List.of(lived(18, 20)), List.of(was))).hasSize(2);
	}

	@Test
	void leavesWhatHasNoPartnerAloneInTheOrderOfDays() {
		Lived early = lived(0, 5);
		Lived late = lived(60, 65);
		List<Episodes> pairs = Episodes.paired(List.of(late), List.of(early));
		assertThat(pairs).containsExactly(new Episodes(null, early), new Episodes(late, null));
		assertThat(pairs).extracting(Episodes::opened).containsExactly(Story.day(0), Story.day(60));
		assertThat(pairs).allMatch(Episodes::differs);
		assertThat(pairs).extracting(Episodes::returnsBy).containsOnly(0);
	}

	/** One long illness under other rules is the partner of the first of two. */
	@Test
	void pairsNoEpisodeTwice() {
		Lived first = lived(0, 5);
		Lived second = lived(20, 25);
		Lived one = lived(0, 30);
		assertThat(Episodes.paired(List.of(first, second), List.of(one))).containsExactly(new Episodes(first, one),
				new Episodes(second, null));
	}

	@Test
	void opensOnTheDayItDidNotOnTheOneItWouldHave() {
		assertThat(new Episodes(lived(3, 9), lived(1, 9)).opened()).isEqualTo(Story.day(3));
		assertThatIllegalStateException().isThrownBy(() -> new Episodes(null, null).opened());
	}

	@Test
	void differsByAnyDayButTheLastSeen() {
		Lived was = lived(0, 10);
		Lived seenLater = new Lived(was.opened(), was.firstStage(), was.fullTraining(), was.closed(), Story.day(30));
		assertThat(new Episodes(was, seenLater).differs()).isFalse();
		assertThat(new Episodes(was, lived(0, 11)).differs()).isTrue();
		assertThat(new Episodes(was, lived(1, 10)).differs()).isTrue();
	}

	@Test
	void takesNotYetForLaterThanAnyDay() {
		assertThat(new Episodes(lived(0, 10), lived(0, 12)).returnsBy()).isPositive();
		assertThat(new Episodes(lived(0, 10), lived(0, 9)).returnsBy()).isNegative();
		assertThat(new Episodes(lived(0, 10), lived(0, null)).returnsBy()).isPositive();
		assertThat(new Episodes(lived(0, null), lived(0, 10)).returnsBy()).isNegative();
		assertThat(new Episodes(lived(0, null), lived(0, null)).returnsBy()).isZero();
	}

}
