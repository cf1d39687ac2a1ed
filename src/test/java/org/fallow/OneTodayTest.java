package org.fallow;

import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Set;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.fallow.access.Trace;
import org.fallow.team.Today;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

/**
 * Only {@link Today} says which day it is: whoever asks a clock for one forgets whose day
 * is meant.
 */
@AnalyzeClasses(packages = "org.fallow", importOptions = OneTodayTest.NoTests.class)
class OneTodayTest {

	private static final Set<String> DAYS = Set.of(LocalDate.class.getName(), LocalDateTime.class.getName(),
			ZonedDateTime.class.getName());

	/**
	 * The trace stands below teams and is told the zone; a cookie counts days of its own.
	 */
	private static final Set<String> OTHERS = Set.of(Today.class.getName(), Trace.class.getName(),
			"org.fallow.account.web.StaySignedIn");

	@ArchTest
	static final ArchRule NOBODY_ASKS_FOR_THE_DAY_NOW = noClasses().should().callMethodWhere(isDay("now"));

	@ArchTest
	static final ArchRule NO_CLOCK_IS_ASKED_FOR_A_DAY = noClasses()
		.that(new DescribedPredicate<JavaClass>("may not ask a clock for the day") {
			@Override
			public boolean test(JavaClass one) {
				return !OTHERS.contains(one.getName()) && one.getAllFields()
					.stream()
					.anyMatch((field) -> field.getRawType().isAssignableTo(Clock.class));
			}
		})
		.should()
		.callMethodWhere(isDay("ofInstant"));

	/** Leaves out what lies beside this class, wherever the build puts it. */
	static final class NoTests implements ImportOption {

		private static final String HERE = OneTodayTest.class.getProtectionDomain()
			.getCodeSource()
			.getLocation()
			.toString();

		@Override
		public boolean includes(Location location) {
			return !location.contains(HERE.substring(HERE.indexOf('/')));
		}

	}

	private static DescribedPredicate<JavaCall<?>> isDay(String method) {
		return new DescribedPredicate<>("a day is made by " + method) {
			@Override
			public boolean test(JavaCall<?> call) {
				return call.getName().equals(method) && DAYS.contains(call.getTargetOwner().getName());
			}
		};
	}

}
