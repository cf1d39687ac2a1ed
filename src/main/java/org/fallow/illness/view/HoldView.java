package org.fallow.illness.view;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.core.DayAssessment;
import org.fallow.wording.Message;

/**
 * A standing hold as a page shows it.
 *
 * @param since the day its cause speaks of
 * @param reason why
 */
public record HoldView(LocalDate since, Message reason) {

	/**
	 * The holds that stand on an assessment's day.
	 * @param assessment the day's
	 * @return in the order recorded
	 */
	public static List<HoldView> standing(DayAssessment assessment) {
		return assessment.state()
			.holds()
			.stream()
			.filter((hold) -> !hold.resumed())
			.map((hold) -> new HoldView(hold.day(), Said.of(Message.of("reason.hold", hold.cause(), hold.day()))))
			.toList();
	}

}
