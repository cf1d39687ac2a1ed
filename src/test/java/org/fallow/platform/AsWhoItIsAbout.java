package org.fallow.platform;

import java.util.Arrays;
import java.util.Optional;

import org.aopalliance.intercept.MethodInterceptor;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Submission;
import org.fallow.team.ByCoach;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;

import org.springframework.aop.support.ComposablePointcut;
import org.springframework.aop.support.DefaultPointcutAdvisor;
import org.springframework.aop.support.annotation.AnnotationMatchingPointcut;
import org.springframework.core.Ordered;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.servlet.DispatcherServlet;

/**
 * In tests, a call about an athlete by nobody is done as the person the sending names,
 * else as the athlete. The checks and the database's policies then apply to that person
 * as ever; who is signed in stays who acts.
 */
final class AsWhoItIsAbout {

	private AsWhoItIsAbout() {
	}

	static DefaultPointcutAdvisor advisor() {
		ComposablePointcut calls = new ComposablePointcut(
				AnnotationMatchingPointcut.forMethodAnnotation(OfAthlete.class))
			.union((org.springframework.aop.Pointcut) AnnotationMatchingPointcut.forMethodAnnotation(ByCoach.class))
			.union((org.springframework.aop.Pointcut) AnnotationMatchingPointcut
				.forMethodAnnotation(ByFullCoach.class));
		MethodInterceptor asSomebody = (call) -> {
			Optional<PersonId> who = sender(call.getArguments());
			if (who.isEmpty() && new CurrentPerson().id().isEmpty()) {
				who = lastPerson(call.getArguments());
			}
			if (who.isEmpty() || isInARequest() || TransactionSynchronizationManager.isActualTransactionActive()) {
				return call.proceed();
			}
			return CurrentPerson.callAs(who.get(), () -> {
				try {
					return call.proceed();
				}
				catch (RuntimeException | Error ex) {
					throw ex;
				}
				catch (Throwable ex) {
					throw new IllegalStateException(ex);
				}
			});
		};
		DefaultPointcutAdvisor advisor = new DefaultPointcutAdvisor(calls, asSomebody);
		advisor.setOrder(Ordered.HIGHEST_PRECEDENCE);
		return advisor;
	}

	/** Test threads have a request of their own, which no servlet ever saw. */
	private static boolean isInARequest() {
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		return request != null && request.getAttribute(DispatcherServlet.WEB_APPLICATION_CONTEXT_ATTRIBUTE,
				RequestAttributes.SCOPE_REQUEST) != null;
	}

	private static Optional<PersonId> sender(Object[] arguments) {
		return Arrays.stream(arguments)
			.filter(Submission.class::isInstance)
			.map((sending) -> ((Submission) sending).actor())
			.findFirst();
	}

	/** The athlete, or the one who takes mornings in for the athlete. */
	private static Optional<PersonId> lastPerson(Object[] arguments) {
		return Arrays.stream(arguments)
			.filter(PersonId.class::isInstance)
			.map(PersonId.class::cast)
			.reduce((first, last) -> last);
	}

}
