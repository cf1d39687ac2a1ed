package org.fallow.platform;

import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/** True unless {@code spring.datasource.url} names a database. */
class NoDatabaseConfigured implements Condition {

	@Override
	public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
		return in(context.getEnvironment());
	}

	static boolean in(Environment environment) {
		return !StringUtils.hasText(environment.getProperty("spring.datasource.url"));
	}

}
