package org.fallow;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ThreadLocalRandom;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.syntax.elements.GivenClassesConjunction;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleName;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

/**
 * The cores are functions of their arguments: no framework, no database, no clock, no
 * dice, no locale, no unordered collection.
 */
@AnalyzeClasses(packages = "org.fallow", importOptions = ImportOption.DoNotIncludeTests.class)
class PureCoreTest {

	private static final DescribedPredicate<JavaClass> OUTSIDE = resideInAnyPackage("org.springframework..",
			"jakarta..", "java.sql..", "javax.sql..", "org.postgresql..", "org.slf4j..")
		.and(DescribedPredicate.not(resideInAnyPackage("org.springframework.modulith")));

	@ArchTest
	static final ArchRule USES_NO_FRAMEWORK = core().should().dependOnClassesThat(OUTSIDE);

	@ArchTest
	static final ArchRule ASKS_NO_CLOCK = core().should().dependOnClassesThat().areAssignableTo(Clock.class);

	@ArchTest
	static final ArchRule ASKS_NOT_FOR_NOW = core().should().callMethodWhere(isNow());

	@ArchTest
	static final ArchRule THROWS_NO_DICE = core().should()
		.dependOnClassesThat()
		.areAssignableTo(Random.class)
		.orShould()
		.callMethod(Math.class, "random")
		.orShould()
		.dependOnClassesThat()
		.areAssignableTo(ThreadLocalRandom.class);

	@ArchTest
	static final ArchRule ASKS_FOR_NO_LOCALE = core().should().callMethod(Locale.class, "getDefault");

	@ArchTest
	static final ArchRule KEEPS_ORDER = core().should()
		.dependOnClassesThat()
		.belongToAnyOf(HashMap.class, HashSet.class);

	private static GivenClassesConjunction core() {
		return noClasses().that(resideInAnyPackage("org.fallow.baseline..", "org.fallow.illness.core..",
				"org.fallow.training.core..", "org.fallow.contact.core..", "org.fallow.wording..")
			.and(DescribedPredicate.not(simpleName("package-info"))));
	}

	private static DescribedPredicate<JavaCall<?>> isNow() {
		return DescribedPredicate.describe("now", (call) -> isNow(call.getTargetOwner(), call.getName()));
	}

	private static boolean isNow(JavaClass owner, String method) {
		boolean ofTime = owner.isEquivalentTo(Instant.class) || owner.isEquivalentTo(LocalDate.class)
				|| owner.isEquivalentTo(LocalDateTime.class) || owner.isEquivalentTo(ZonedDateTime.class);
		return (ofTime && "now".equals(method)) || (owner.isEquivalentTo(System.class)
				&& (method.equals("currentTimeMillis") || method.equals("nanoTime")));
	}

}
