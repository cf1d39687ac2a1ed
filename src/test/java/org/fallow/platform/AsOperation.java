package org.fallow.platform;

import java.lang.reflect.Method;

import org.fallow.access.Purpose;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.InvocationInterceptor;
import org.junit.jupiter.api.extension.ReflectiveInvocationContext;

import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Runs a test's own steps for the purpose OPERATION, so that it can make clubs, people
 * and posts. The purpose counts only where nobody is signed in, and opens no health data.
 */
class AsOperation implements InvocationInterceptor, AfterEachCallback {

	@Override
	public void afterEach(ExtensionContext context) {
		As.nobody();
	}

	@Override
	public void interceptTestMethod(Invocation<Void> step, ReflectiveInvocationContext<Method> context,
			ExtensionContext extension) throws Throwable {
		runTest(step, extension);
	}

	@Override
	public void interceptTestTemplateMethod(Invocation<Void> step, ReflectiveInvocationContext<Method> context,
			ExtensionContext extension) throws Throwable {
		runTest(step, extension);
	}

	@Override
	public void interceptBeforeEachMethod(Invocation<Void> step, ReflectiveInvocationContext<Method> context,
			ExtensionContext extension) throws Throwable {
		run(step);
	}

	@Override
	public void interceptAfterEachMethod(Invocation<Void> step, ReflectiveInvocationContext<Method> context,
			ExtensionContext extension) throws Throwable {
		run(step);
	}

	private static void runTest(Invocation<Void> step, ExtensionContext extension) throws Throwable {
		if (extension.getRequiredTestClass().isAnnotationPresent(NobodyOperates.class)) {
			step.proceed();
		}
		else {
			run(step);
		}
	}

	private static void run(Invocation<Void> step) throws Throwable {
		if (TransactionSynchronizationManager.isActualTransactionActive()) {
			step.proceed();
			return;
		}
		Throwable thrown = Purpose.OPERATION.call(() -> {
			try {
				step.proceed();
				return null;
			}
			catch (Throwable ex) {
				return ex;
			}
		});
		if (thrown != null) {
			throw thrown;
		}
	}

}
