package org.fallow;

import java.util.Collection;
import java.util.List;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.fallow.access.PersonId;
import org.fallow.team.ByCoach;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;

import org.springframework.stereotype.Service;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;

/**
 * Whatever a module does about an athlete for others to call is asked first whose data it
 * is: a public method of a service whose first argument names athletes bears one of the
 * annotations that ask.
 */
@AnalyzeClasses(packages = "org.fallow", importOptions = ImportOption.DoNotIncludeTests.class)
class DoorsTest {

	@ArchTest
	static final ArchRule ASK_WHOSE_DATA_IT_IS = methods().that(takeAthletes())
		.and()
		.arePublic()
		.and()
		.areDeclaredInClassesThat()
		.areAnnotatedWith(Service.class)
		.and()
		.areDeclaredInClassesThat()
		.resideInAnyPackage("org.fallow.entry..", "org.fallow.illness..", "org.fallow.board..", "org.fallow.training..",
				"org.fallow.contact..")
		.should()
		.beAnnotatedWith(OfAthlete.class)
		.orShould()
		.beAnnotatedWith(OfAthletes.class)
		.orShould()
		.beAnnotatedWith(ByCoach.class)
		.orShould()
		.beAnnotatedWith(ByFullCoach.class);

	private static DescribedPredicate<JavaMethod> takeAthletes() {
		return DescribedPredicate.describe("take athletes first", (method) -> {
			List<JavaClass> types = method.getRawParameterTypes();
			return !types.isEmpty()
					&& (types.get(0).isEquivalentTo(PersonId.class) || types.get(0).isEquivalentTo(Collection.class));
		});
	}

}
